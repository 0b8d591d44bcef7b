package railwitness.analysis.expected;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import railwitness.analysis.converter.Part;
import railwitness.analysis.converter.Parts;
import railwitness.analysis.converter.Result;
import railwitness.analysis.design.Design;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;
import railwitness.analysis.uncertainty.Term;

/**
 * What a design sheet leads to expect at each point of a session, with the uncertainty of that: every part's tolerance is
 * an influence that all points share, and so is what the forward model itself gets wrong. Sensitivities are taken over
 * one standard uncertainty to either side. What is uncertain by more than a third says nothing and is left out.
 */
public final class Expectations {
    private static final double SAYS_NOTHING = 0.35;

    /** Below this share of full load a choke may run empty, and the rail rises: how far, only the choke itself tells. */
    private static final double RUNS_EMPTY = 0.1;

    /** So many parts left out are most of them. */
    private static final int MANY = 8;

    private final Map<OperatingPoint, Expected> byPoint;

    private final List<String> rails;
    private final double[] fullLoads;

    private Expectations(Map<OperatingPoint, Expected> byPoint, List<String> rails, double[] fullLoads) {
        this.byPoint = byPoint;
        this.rails = rails;
        this.fullLoads = fullLoads;
    }

    PointAgainstPoint fallUnderLoad(List<OperatingPoint> points) {
        return new PointAgainstPoint(points, this, rails, fullLoads);
    }

    /** Works all points out. */
    public static Expectations of(Design design, List<OperatingPoint> points) {
        SheetParts sheet = SheetParts.of(design);
        double[] fullLoads = Situation.fullLoads(design, points);
        Shared shared = new Shared(sheet);
        Map<OperatingPoint, Expected> byPoint = new IdentityHashMap<>();
        for (OperatingPoint point : points) {
            if (Situation.covers(design, point)) {
                Situation situation = Situation.of(design, point, fullLoads);
                byPoint.put(point, new AtPoint(sheet, situation, shared).expected());
            }
        }
        return new Expectations(byPoint, sheet.parts().rails(), fullLoads);
    }

    /** What is expected at a point of the session; nothing where the sheet does not speak of it. */
    public Expected at(OperatingPoint point) {
        return byPoint.getOrDefault(point, Expected.nothing());
    }

    /** Influences that the points have in common. */
    private static final class Shared {
        private final List<Influence> parts = new ArrayList<>();
        private final Influence volts = Influence.normal("model: rails", 1, "1");
        private final Influence sag = Influence.normal("model: fall under load", 1, "1");
        private final Influence idleVolts = Influence.normal("model: rails without load", 1, "1");
        private final Influence loss = Influence.normal("model: loss", 1, "1");
        private final Influence idleLoss = Influence.normal("model: loss without load", 1, "1");
        private final Influence ripple = Influence.normal("model: ripple", 1, "1");
        private final Influence usual = Influence.normal("parts that the sheet leaves out, together", 1, "1");

        Shared(SheetParts sheet) {
            for (Tolerance tolerance : sheet.tolerances()) {
                String name = tolerance.name() + (tolerance.missing() ? " (not on the sheet)" : " (usual tolerance)");
                parts.add(Influence.normal(name, 1, "1"));
            }
        }
    }

    private static final class AtPoint {
        private final SheetParts sheet;
        private final Situation situation;
        private final Shared shared;
        private final Result middle;
        private final Map<String, Estimate> unbounded = new LinkedHashMap<>();
        private final List<Result> above = new ArrayList<>();
        private final List<Result> below = new ArrayList<>();

        AtPoint(SheetParts sheet, Situation situation, Shared shared) {
            this.sheet = sheet;
            this.situation = situation;
            this.shared = shared;
            this.middle = situation.of(sheet.parts());
            for (Tolerance tolerance : sheet.tolerances()) {
                boolean exact = tolerance.relativeU() == 0;
                above.add(exact ? middle : situation.of(tolerance.off(sheet.parts(), 1), middle));
                below.add(exact ? middle : situation.of(tolerance.off(sheet.parts(), -1), middle));
            }
        }

        /** Nothing is expected of a load so absurd that the converter has no state for it. */
        Expected expected() {
            boolean known = hasState(middle)
                    && above.stream().allMatch(AtPoint::hasState)
                    && below.stream().allMatch(AtPoint::hasState);
            if (!known) {
                return Expected.nothing();
            }
            Map<String, Estimate> values = new LinkedHashMap<>();
            Parts parts = sheet.parts();
            boolean choke = parts.choke();
            boolean idle = situation.fraction() < 0.01;
            Estimate output = Estimate.exact(0);
            for (int rail = 0; rail < parts.rails().size(); rail++) {
                int index = rail;
                String name = parts.rails().get(rail);
                double fraction = situation.fractions()[rail];
                double volts = middle.volts()[rail];
                Estimate voltage = estimate(result -> result.volts()[index])
                        .with(own("model: " + name, ModelError.volts(choke, fraction) * volts))
                        .with(
                                fraction < 0.01
                                        ? shared.idleVolts.times(ModelError.commonIdleVolts(choke) * volts)
                                        : shared.volts.times(ModelError.commonVolts() * volts))
                        .with(shared.sag.times(ModelError.sag(choke) * situation.fraction() * volts));
                output = output.plus(voltage.scale(situation.loads()[rail]));
                Estimate signed = parts.sign(rail) < 0 ? voltage.negate() : voltage;
                if (choke && fraction < RUNS_EMPTY && sheet.leavesOut(Part.CHOKE)) {
                    unbounded.put(Expected.voltage(name), signed);
                } else {
                    keep(values, Expected.voltage(name), signed);
                }
                if (fraction >= 0.05) {
                    double ripple = middle.rippleVolts()[rail];
                    keep(
                            values,
                            Expected.ripple(name),
                            estimate(result -> result.rippleVolts()[index])
                                    .with(own("model: ripple of " + name, ModelError.ripple(fraction) * ripple))
                                    .with(shared.ripple.times(ModelError.commonRipple() * ripple)));
                }
            }
            double watts = loss(middle);
            Estimate loss = estimate(AtPoint::loss)
                    .with(own("model: loss", ModelError.loss() * watts))
                    .with(
                            idle
                                    ? shared.idleLoss.times(ModelError.commonIdleLoss() * watts)
                                    : shared.loss.times(ModelError.commonLoss() * watts));
            if (sheet.missing().size() > MANY) {
                loss = loss.with(shared.usual.times(ModelError.usualLoss() * watts));
            }
            keep(values, Expected.LOSS, loss);
            Estimate power = output.plus(loss);
            keep(values, Expected.INPUT_CURRENT, power.scale(1 / situation.inputVolts()));
            if (!idle && power.value() > 0) {
                keep(values, Expected.EFFICIENCY, output.over(power));
            }
            return new Expected(values, unbounded);
        }

        private static boolean hasState(Result result) {
            return Double.isFinite(loss(result))
                    && Arrays.stream(result.volts()).allMatch(Double::isFinite)
                    && Arrays.stream(result.rippleVolts()).allMatch(Double::isFinite);
        }

        private static double loss(Result result) {
            return result.lossWatts().values().stream()
                    .mapToDouble(Double::doubleValue)
                    .sum();
        }

        private static Term own(String name, double u) {
            return Influence.normal(name, Math.abs(u), "1").times(1);
        }

        private void keep(Map<String, Estimate> values, String what, Estimate value) {
            if (value.value() != 0 && value.u() <= SAYS_NOTHING * Math.abs(value.value())) {
                values.put(what, value);
            } else if (value.value() != 0) {
                unbounded.put(what, value);
            }
        }

        private Estimate estimate(java.util.function.ToDoubleFunction<Result> what) {
            List<Term> terms = new ArrayList<>();
            for (int i = 0; i < above.size(); i++) {
                double change = (what.applyAsDouble(above.get(i)) - what.applyAsDouble(below.get(i))) / 2;
                if (change != 0) {
                    terms.add(shared.parts.get(i).times(change));
                }
            }
            return Estimate.of(what.applyAsDouble(middle), terms);
        }
    }
}
