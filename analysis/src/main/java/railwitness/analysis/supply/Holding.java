package railwitness.analysis.supply;

import java.util.List;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * Moves a rail to another input terminal voltage, so that the sag of source and leads is not taken for the unit's.
 *
 * @param slope of the rail's magnitude against the input, V/V
 * @param how appended to where a figure holds
 */
record Holding(Estimate slope, String how) {
    static final String MISSING = "the input sagged and no line sweep says how the rail follows it";

    /** Inputs this close to each other, relative, need no moving. */
    private static final double SAME_INPUT = 5e-4;

    /** For points to be moved together: by the line sweep, or not at all where the input did not change. */
    static Optional<Holding> of(Points points, String rail, List<OperatingPoint> moved) {
        var inputs = moved.stream()
                .mapToDouble(point -> point.input().voltage().value())
                .summaryStatistics();
        return find(points, rail, inputs.getMax() - inputs.getMin() <= SAME_INPUT * inputs.getMax());
    }

    /** For one point to be moved to an input, V. */
    static Optional<Holding> to(Points points, String rail, OperatingPoint point, double volts) {
        double here = point.input().voltage().value();
        return find(points, rail, Math.abs(here - volts) <= SAME_INPUT * volts);
    }

    private static Optional<Holding> find(Points points, String rail, boolean same) {
        Optional<Holding> bySlope =
                LineFit.of(points, rail).map(fit -> new Holding(fit.slope(), ", moved by the step-up slope"));
        return bySlope.isEmpty() && same
                ? Optional.of(new Holding(Estimate.exact(0), ", the input did not change"))
                : bySlope;
    }

    /** The rail's magnitude as it would be at that input, V. */
    Estimate moved(OperatingPoint point, String rail, Estimate inputVolts) {
        Estimate distance = inputVolts.minus(point.input().voltage());
        return point.rails().get(rail).voltage().abs().plus(slope.times(distance));
    }
}
