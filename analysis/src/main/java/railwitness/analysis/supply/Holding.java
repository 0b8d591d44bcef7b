package railwitness.analysis.supply;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/**
 * Moves a rail to one input terminal voltage, so that the sag of source and leads is not taken for the unit's. With a design
 * sheet that is its nominal input, for all figures alike.
 *
 * @param slope of the rail's magnitude against the input, V/V
 * @param reference input at the terminals to which all is moved, V
 * @param how where the figure holds, in words
 */
record Holding(Estimate slope, Estimate reference, String how) {
    static final String MISSING = "the input sagged and no line sweep says how the rail follows it";

    /** Inputs this close to each other, relative, need no line sweep to be moved. */
    private static final double SAME_INPUT = 5e-4;

    /**
     * Without a line sweep an unregulated rail follows its input in proportion, and a little more: what diodes keep back does not
     * grow with it. Half width, relative.
     */
    private static final double IN_PROPORTION = 0.15;

    /** The sheet's nominal input; empty without a sheet. */
    static OptionalDouble nominal(Points points) {
        return points.design()
                .map(sheet -> OptionalDouble.of(sheet.input().nominalVolts()))
                .orElse(OptionalDouble.empty());
    }

    /** For points to be moved together; empty where nothing says how the rail follows an input that changed. */
    static Optional<Holding> of(Points points, String rail, List<OperatingPoint> moved) {
        OperatingPoint last = moved.get(moved.size() - 1);
        OptionalDouble nominal = nominal(points);
        Estimate reference = nominal.isPresent()
                ? Estimate.exact(nominal.getAsDouble())
                : last.input().voltage();
        Optional<LineFit> line = LineFit.of(points, rail);
        boolean there = moved.stream().allMatch(point -> near(point, reference.value()));
        if (line.isPresent()) {
            return Optional.of(new Holding(
                    line.get().slope(),
                    reference,
                    there ? words(reference, last, "") : words(reference, last, ", moved by the step-up slope")));
        }
        if (there) {
            return Optional.of(new Holding(inProportion(points, rail, last), reference, words(reference, last, "")));
        }
        double here = last.input().voltage().value();
        return moved.stream().allMatch(point -> near(point, here))
                ? Optional.of(new Holding(
                        inProportion(points, rail, last),
                        last.input().voltage(),
                        words(last.input().voltage(), last, ", the input did not change and no line sweep moves it")))
                : Optional.empty();
    }

    /** For one point to be moved to an input, V; in proportion where there is no line sweep. */
    static Holding to(Points points, String rail, OperatingPoint point, double volts) {
        Estimate reference = Estimate.exact(volts);
        return LineFit.of(points, rail)
                .map(line -> new Holding(
                        line.slope(),
                        reference,
                        words(reference, point, near(point, volts) ? "" : ", moved by the step-up slope")))
                .orElseGet(() -> new Holding(
                        inProportion(points, rail, point),
                        reference,
                        words(
                                reference,
                                point,
                                near(point, volts) ? "" : ", moved in proportion to the input: no line sweep")));
    }

    private static boolean near(OperatingPoint point, double volts) {
        return Math.abs(point.input().voltage().value() - volts) <= SAME_INPUT * volts;
    }

    private static String words(Estimate reference, OperatingPoint point, String how) {
        return String.format(
                Locale.ROOT,
                "input held at %.2f V %s%s",
                reference.value(),
                point.inputSource().words(),
                how);
    }

    private static Estimate inProportion(Points points, String rail, OperatingPoint point) {
        double input = Math.abs(point.input().voltage().value());
        double whole = input > 0 ? point.rails().get(rail).voltage().abs().value() / input : 0;
        boolean known = points.design().isPresent();
        double middle = !known ? whole / 2 : regulated(points, rail) ? 0 : whole;
        double half = !known ? whole / 2 : IN_PROPORTION * whole;
        return Estimate.of(
                middle,
                Influence.rectangular("how the rail follows its input", half, "V/V")
                        .times(1));
    }

    private static boolean regulated(Points points, String rail) {
        return points.design()
                .flatMap(sheet -> sheet.rail(rail).map(sheet::regulates))
                .orElse(false);
    }

    /** The rail's magnitude as it would be at the reference, V. */
    Estimate moved(OperatingPoint point, String rail) {
        Estimate distance = reference.minus(point.input().voltage());
        return point.rails().get(rail).voltage().abs().plus(slope.times(distance));
    }
}
