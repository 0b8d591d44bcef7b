package railwitness.analysis.verdict;

import java.util.OptionalDouble;
import railwitness.analysis.uncertainty.Estimate;

/**
 * What a figure may be: at least, at most, or both; the ends themselves conform. In the figure's unit.
 *
 * @param least lower tolerance limit, absent where there is none
 * @param most upper tolerance limit, absent where there is none
 */
public record Limit(OptionalDouble least, OptionalDouble most) {
    private static final double TWO_SIDED = 0.95;
    private static final double ONE_SIDED = 0.90;

    public Limit {
        least.ifPresent(value -> finite("lower limit", value));
        most.ifPresent(value -> finite("upper limit", value));
        if (least.isEmpty() && most.isEmpty()) {
            throw new IllegalArgumentException("limit has no end: give a least, a most, or both");
        }
        if (least.isPresent() && most.isPresent() && least.getAsDouble() > most.getAsDouble()) {
            throw new IllegalArgumentException("lower limit is " + least.getAsDouble()
                    + ": must not lie above the upper limit " + most.getAsDouble());
        }
    }

    private static void finite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " is " + value + ": must be a finite number");
        }
    }

    public static Limit atLeast(double least) {
        return new Limit(OptionalDouble.of(least), OptionalDouble.empty());
    }

    public static Limit atMost(double most) {
        return new Limit(OptionalDouble.empty(), OptionalDouble.of(most));
    }

    public static Limit between(double least, double most) {
        return new Limit(OptionalDouble.of(least), OptionalDouble.of(most));
    }

    /** How far inside the nearer end a value lies; negative outside. */
    public double margin(double value) {
        double below = most.isPresent() ? most.getAsDouble() - value : Double.POSITIVE_INFINITY;
        double above = least.isPresent() ? value - least.getAsDouble() : Double.POSITIVE_INFINITY;
        return Math.min(below, above);
    }

    /** Whether it has one end only. */
    public boolean oneSided() {
        return least.isEmpty() || most.isEmpty();
    }

    /**
     * How far inside a figure must lie to be 95 % certain: U of 95 % between two ends; at a single one what the error exceeds
     * with 5 % to that side, which of a symmetrical error is U of 90 %.
     */
    public double guardBand(Estimate figure) {
        return figure.coverage(oneSided() ? ONE_SIDED : TWO_SIDED).expanded();
    }

    /** Probability that the true value conforms, given the figure (JCGM 106:2012, 7.2 to 7.5). */
    public double probability(Estimate figure) {
        double below = most.isPresent() ? figure.probabilityAtMost(most.getAsDouble()) : 1;
        double outside = least.isPresent() ? figure.probabilityAtMost(least.getAsDouble()) : 0;
        return conforms(figure) ? 1 : Math.max(0, Math.min(1, below - outside));
    }

    /** An exact figure on the very limit conforms with certainty. */
    private boolean conforms(Estimate figure) {
        return figure.u() == 0 && margin(figure.value()) >= 0;
    }

    /** Such as "at least 34.0", "at most 0.5", "34.0 to 36.0". */
    public String words() {
        if (least.isEmpty()) {
            return "at most " + most.getAsDouble();
        }
        return most.isEmpty() ? "at least " + least.getAsDouble() : least.getAsDouble() + " to " + most.getAsDouble();
    }
}
