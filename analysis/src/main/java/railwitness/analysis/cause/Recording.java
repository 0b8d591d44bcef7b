package railwitness.analysis.cause;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntFunction;
import railwitness.analysis.converter.Part;
import railwitness.analysis.converter.Parts;
import railwitness.analysis.converter.Result;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Rail;
import railwitness.analysis.expected.ModelError;
import railwitness.analysis.expected.SheetParts;
import railwitness.analysis.expected.Situation;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.supply.RippleMeans;
import railwitness.analysis.supply.RippleReach;
import railwitness.analysis.uncertainty.Estimate;

/** All that a session measured, in the form that the fit needs, and what any parts would have given instead. */
final class Recording {
    private static final double LEAST_RIPPLE_FRACTION = 0.05;
    private static final double UNSTATED_VOLTS = 0.002;
    private static final double UNSTATED_POWER = 0.004;
    private static final double LOST_BY_BAND = 0.3;
    private static final double STOPPED = 0.5;
    private static final double UNEVEN_RIPPLE = 0.3;
    private static final double SOURCE_LEAST_OHMS = 0.003;

    /**
     * Standard uncertainty of the logarithm of a nominal rail voltage as what a sound unit gives at full load: people round
     * it, and name it for a hot unit or a cold one. Common practice, no source.
     */
    private static final double NOMINAL_U = 0.04;

    /** A nominal voltage further from what the sheet's parts give is no statement about those parts. */
    private static final double NOMINAL_OF_SOMETHING_ELSE = 0.2;

    private final Design design;
    private final boolean choke;
    private Optional<Situation> asNamed = Optional.empty();
    private final List<Situation> situations = new ArrayList<>();
    private final Warmth warmth;
    private final List<Sighting> sightings = new ArrayList<>();
    private double standbyOfSheet;
    private double leadOhms;

    Recording(Design design, List<OperatingPoint> points, RippleMeans ripple, OptionalDouble leadOhms, boolean choke) {
        this.design = design;
        this.choke = choke;
        double[] fullLoads = Situation.fullLoads(design, points);
        List<OperatingPoint> covered = new ArrayList<>();
        for (OperatingPoint point : points) {
            if (Situation.covers(design, point)) {
                Situation situation = Situation.of(design, point, fullLoads);
                take(point, situation, ripple);
                situations.add(situation);
                covered.add(point);
            }
        }
        leadOhms.ifPresent(ohms -> source(covered, ohms));
        warmth = Warmth.of(covered);
    }

    private void take(OperatingPoint point, Situation situation, RippleMeans ripple) {
        int index = situations.size();
        for (int rail = 0; rail < design.rails().size(); rail++) {
            String name = design.rails().get(rail).name();
            Optional<RailPoint> at = point.rail(name);
            if (at.isPresent()) {
                volts(point, index, rail, name, at.get().voltage(), situation);
                ripple(point, index, rail, name, at.get(), situation, ripple);
            }
        }
        boolean all =
                design.rails().stream().allMatch(rail -> point.rail(rail.name()).isPresent());
        if (all) {
            loss(point, index);
        }
    }

    private void volts(OperatingPoint point, int index, int rail, String name, Estimate voltage, Situation situation) {
        double nominal = Math.abs(design.rails().get(rail).nominalVolts());
        double sign = Math.signum(design.rails().get(rail).nominalVolts());
        double magnitude = Math.max(sign * voltage.value(), 0.01 * nominal);
        double u = Math.hypot(voltage.u() / magnitude, voltage.known() ? 0 : UNSTATED_VOLTS / 4);
        double sigma = Math.hypot(u, ModelError.volts(choke, situation.fractions()[rail]));
        sightings.add(new Sighting(
                Sighting.Kind.VOLTS, rail, Optional.of(name), index, step(point), Math.log(magnitude), sigma));
    }

    private void ripple(
            OperatingPoint point,
            int index,
            int rail,
            String name,
            RailPoint at,
            Situation situation,
            RippleMeans means) {
        double fraction = situation.fractions()[rail];
        Optional<Estimate> read = at.rippleRms().filter(value -> value.value() > 0);
        if (read.isEmpty() || fraction < LEAST_RIPPLE_FRACTION) {
            return;
        }
        RippleReach reach = RippleReach.of(
                Optional.ofNullable(means.bands().get(name)), design.converter().frequencyHz());
        if (reach == RippleReach.BELOW) {
            return;
        }
        double u = Math.min(1, read.get().u() / read.get().value());
        double sigma = Math.hypot(
                Math.hypot(u, ModelError.ripple(fraction)), reach == RippleReach.LOSES_PART ? LOST_BY_BAND : 0);
        sightings.add(new Sighting(
                Sighting.Kind.RIPPLE,
                rail,
                Optional.of(name),
                index,
                step(point),
                Math.log(read.get().value()),
                sigma));
    }

    private void loss(OperatingPoint point, int index) {
        Estimate loss = point.loss();
        double power = point.input().power().value();
        double watts = Math.max(loss.value(), 0.005 * power + 1e-3);
        double unstated = loss.known() ? 0 : UNSTATED_POWER / 4 * power;
        double u = Math.min(2, Math.hypot(loss.u(), unstated) / watts);
        sightings.add(new Sighting(
                Sighting.Kind.LOSS,
                -1,
                Optional.empty(),
                index,
                step(point),
                Math.log(watts),
                Math.hypot(u, ModelError.loss())));
    }

    /** Current with the unit off, where the sheet says what is much. */
    void standby(Estimate measured, double limit) {
        standbyOfSheet = limit / 2;
        sightings.add(new Sighting(
                Sighting.Kind.STANDBY,
                -1,
                Optional.empty(),
                -1,
                "",
                measured.value(),
                Math.hypot(measured.u(), limit / 4)));
    }

    /** What the terminals lose of the set voltage for each ampere, between the least and the most input current. */
    private void source(List<OperatingPoint> points, double stated) {
        List<OperatingPoint> set =
                points.stream().filter(point -> point.setVolts().isPresent()).toList();
        if (set.size() < 2) {
            return;
        }
        OperatingPoint light = set.get(0);
        OperatingPoint heavy = set.get(0);
        for (OperatingPoint point : set) {
            double amperes = point.input().current().value();
            light = amperes < light.input().current().value() ? point : light;
            heavy = amperes > heavy.input().current().value() ? point : heavy;
        }
        Estimate more = heavy.input().current().minus(light.input().current());
        if (more.value() < 1) {
            return;
        }
        double moved = heavy.setVolts().getAsDouble() - light.setVolts().getAsDouble();
        Estimate lost = light.input().voltage().minus(heavy.input().voltage()).plus(moved);
        Estimate ohms = lost.over(more);
        leadOhms = stated;
        sightings.add(new Sighting(
                Sighting.Kind.SOURCE,
                -1,
                Optional.empty(),
                -1,
                "",
                ohms.value(),
                Math.hypot(ohms.u(), SOURCE_LEAST_OHMS + 0.15 * stated)));
    }

    private static String step(OperatingPoint point) {
        return point.step().isBlank() ? point.stage() : point.step();
    }

    /** What the sheet calls the rails' nominal voltage says what their parts can be; not where those were guessed from it. */
    void nominal(SheetParts sheet) {
        if (sightings.isEmpty()
                || design.converter().regulated()
                || sheet.leavesOut(Part.RATIO)
                || choke && sheet.leavesOut(Part.DUTY)
                || design.rails().stream()
                        .anyMatch(rail -> rail.fullLoadAmperes().isEmpty())) {
            return;
        }
        double[] loads = design.rails().stream()
                .mapToDouble(rail -> rail.fullLoadAmperes().getAsDouble())
                .toArray();
        double[] fractions = loads.clone();
        java.util.Arrays.fill(fractions, 1);
        Situation named = new Situation(design.input().nominalVolts(), loads, fractions);
        double value = 0;
        for (Rail rail : design.rails()) {
            value += Math.log(Math.abs(rail.nominalVolts())) / loads.length;
        }
        if (Math.abs(value - mean(named.of(sheet.parts()))) < NOMINAL_OF_SOMETHING_ELSE) {
            asNamed = Optional.of(named);
            sightings.add(new Sighting(Sighting.Kind.NOMINAL, -1, Optional.empty(), -1, "", value, NOMINAL_U));
        }
    }

    private static double mean(Result result) {
        double sum = 0;
        for (double volts : result.volts()) {
            sum += Math.log(Math.max(volts, 1e-3));
        }
        return sum / result.volts().length;
    }

    List<Sighting> sightings() {
        return sightings;
    }

    /** How many states of the unit are worked out: one of each point, and one of a sound unit at its nominal load. */
    int states() {
        return situations.size() + 1;
    }

    /** Whether the unit is loaded at a point; not where a drain of standby is all that was measured. */
    boolean loaded(int point) {
        return point < situations.size() && situations.get(point).fraction() > LEAST_RIPPLE_FRACTION;
    }

    /** How far a point lies on the way from the coolest to the warmest, 0 to 1. */
    double progress(int point) {
        return warmth.share(point);
    }

    /** How much warmer the unit was at a point than at its coolest, K. */
    double kelvin(int point) {
        return warmth.kelvin(point);
    }

    /** Whether the unit warmed so far that a fault of heat could show. */
    boolean showsHeat() {
        return warmth.shows();
    }

    /**
     * What parts would give for every sighting.
     *
     * @param parts at each point
     * @param sound the same without a fault
     * @param near results of nearly the same parts, or nulls; replaced by those of these parts
     */
    double[] predict(IntFunction<Parts> parts, Parts sound, double extraLeadOhms, Result[] near) {
        Result[] results = new Result[states()];
        double[] values = new double[sightings.size()];
        for (int i = 0; i < values.length; i++) {
            Sighting sighting = sightings.get(i);
            switch (sighting.kind()) {
                case STANDBY -> values[i] = standbyOfSheet + parts.apply(0).get(Part.STANDBY_AMPERES);
                case SOURCE -> values[i] = leadOhms + extraLeadOhms;
                case NOMINAL -> {
                    int last = situations.size();
                    results[last] = asNamed.orElseThrow().of(sound, near[last]);
                    values[i] = mean(results[last]);
                }
                default -> {
                    int point = sighting.point();
                    if (results[point] == null) {
                        results[point] = situations.get(point).of(parts.apply(point), near[point]);
                    }
                    values[i] = logarithm(sighting, results[point]);
                }
            }
        }
        System.arraycopy(results, 0, near, 0, near.length);
        return values;
    }

    private double logarithm(Sighting sighting, Result result) {
        return switch (sighting.kind()) {
            case VOLTS -> {
                double nominal = Math.abs(design.rails().get(sighting.rail()).nominalVolts());
                yield Math.log(Math.max(result.volts()[sighting.rail()], 0.01 * nominal));
            }
            case RIPPLE -> Math.log(Math.max(result.rippleVolts()[sighting.rail()], 1e-6));
            default -> {
                double watts = 0;
                for (double value : result.lossWatts().values()) {
                    watts += value;
                }
                yield Math.log(Math.max(watts, 1e-3));
            }
        };
    }

    /** What the model may get wrong for many points at once: one column of standard uncertainties for each such error. */
    List<double[]> modelErrors() {
        List<double[]> columns = new ArrayList<>();
        columns.add(
                column(Sighting.Kind.VOLTS, (sighting, fraction) -> fraction < 0.01 ? 0 : ModelError.commonVolts()));
        columns.add(column(
                Sighting.Kind.VOLTS,
                (sighting, fraction) ->
                        ModelError.sag(choke) * situations.get(sighting.point()).fraction()));
        columns.add(column(
                Sighting.Kind.VOLTS, (sighting, fraction) -> fraction < 0.01 ? ModelError.commonIdleVolts(choke) : 0));
        columns.add(column(Sighting.Kind.LOSS, (sighting, fraction) -> fraction < 0.01 ? 0 : ModelError.commonLoss()));
        columns.add(
                column(Sighting.Kind.LOSS, (sighting, fraction) -> fraction < 0.01 ? ModelError.commonIdleLoss() : 0));
        columns.add(column(Sighting.Kind.RIPPLE, (sighting, fraction) -> ModelError.commonRipple()));
        return columns;
    }

    /** What the model gets wrong of each rail's ripple where the half cycles are unequal. */
    List<double[]> rippleOfUnevenHalves() {
        List<double[]> columns = new ArrayList<>();
        for (int rail = 0; rail < design.rails().size(); rail++) {
            int index = rail;
            columns.add(
                    column(Sighting.Kind.RIPPLE, (sighting, fraction) -> sighting.rail() == index ? UNEVEN_RIPPLE : 0));
        }
        return columns;
    }

    /** What the model gets wrong of a unit whose loss or rails are far from where it was tried, and at each point too. */
    List<double[]> largeFault(boolean eachPoint) {
        List<double[]> columns = new ArrayList<>();
        columns.add(column(Sighting.Kind.VOLTS, (sighting, fraction) -> fraction < 0.01 ? 0.06 : 0));
        columns.add(column(Sighting.Kind.VOLTS, (sighting, fraction) -> 0.05 * fraction));
        columns.add(column(Sighting.Kind.RIPPLE, (sighting, fraction) -> 0.3));
        columns.add(column(Sighting.Kind.LOSS, (sighting, fraction) -> 0.2 * fraction));
        for (int i = 0; i < sightings.size() && eachPoint; i++) {
            double[] own = new double[sightings.size()];
            own[i] = switch (sightings.get(i).kind()) {
                case VOLTS -> 0.02;
                case LOSS -> 0.08;
                case RIPPLE -> 0.3;
                default -> 0;
            };
            columns.add(own);
        }
        return columns;
    }

    /** Errors of a unit that has something nobody thought of: large, on every quantity, on each rail and point. */
    List<double[]> anything() {
        List<double[]> columns = new ArrayList<>();
        columns.add(column(Sighting.Kind.VOLTS, (sighting, fraction) -> 0.15));
        columns.add(column(Sighting.Kind.LOSS, (sighting, fraction) -> 0.7));
        columns.add(column(Sighting.Kind.RIPPLE, (sighting, fraction) -> 0.7));
        for (int rail = 0; rail < design.rails().size(); rail++) {
            int index = rail;
            columns.add(column(Sighting.Kind.VOLTS, (sighting, fraction) -> sighting.rail() == index ? 0.1 : 0));
            columns.add(column(Sighting.Kind.RIPPLE, (sighting, fraction) -> sighting.rail() == index ? 0.5 : 0));
        }
        for (int i = 0; i < sightings.size(); i++) {
            double[] own = new double[sightings.size()];
            own[i] = switch (sightings.get(i).kind()) {
                case VOLTS -> 0.04;
                case NOMINAL -> 0;
                case STANDBY, SOURCE -> 3 * sightings.get(i).sigma();
                default -> 0.3;
            };
            columns.add(own);
        }
        return columns;
    }

    /** Errors of points at which the unit has stopped: all rails far below their nominal voltage. */
    List<double[]> stopped() {
        List<double[]> columns = new ArrayList<>();
        for (int point = 0; point < situations.size(); point++) {
            if (down(point)) {
                int index = point;
                columns.add(column(Sighting.Kind.VOLTS, (sighting, fraction) -> sighting.point() == index ? 1.5 : 0));
            }
        }
        for (int i = 0; i < sightings.size(); i++) {
            Sighting sighting = sightings.get(i);
            if (sighting.point() >= 0 && down(sighting.point())) {
                double[] own = new double[sightings.size()];
                own[i] = sighting.kind() == Sighting.Kind.VOLTS ? 0.2 : 2;
                columns.add(own);
            }
        }
        return columns;
    }

    private boolean down(int point) {
        List<Sighting> volts = sightings.stream()
                .filter(sighting -> sighting.point() == point && sighting.kind() == Sighting.Kind.VOLTS)
                .toList();
        return !volts.isEmpty()
                && volts.stream()
                        .allMatch(sighting -> Math.exp(sighting.value())
                                < STOPPED
                                        * Math.abs(design.rails()
                                                .get(sighting.rail())
                                                .nominalVolts()));
    }

    private interface Size {
        double of(Sighting sighting, double fraction);
    }

    private double[] column(Sighting.Kind kind, Size size) {
        double[] column = new double[sightings.size()];
        for (int i = 0; i < column.length; i++) {
            Sighting sighting = sightings.get(i);
            if (sighting.kind() == kind) {
                Situation situation = situations.get(sighting.point());
                double fraction = sighting.rail() >= 0 ? situation.fractions()[sighting.rail()] : situation.fraction();
                column[i] = size.of(sighting, fraction);
            }
        }
        return column;
    }
}
