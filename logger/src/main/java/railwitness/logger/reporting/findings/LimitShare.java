package railwitness.logger.reporting.findings;

import java.util.OptionalDouble;
import railwitness.analysis.verdict.Limit;

/**
 * How much of its limit a value uses: 0 is ideal, 1 is the limit, more is not allowed. So figures of any unit stand on one
 * scale. The ideal is zero below an upper limit, the middle between two, a hundred per cent above a least efficiency;
 * above any other lower limit the share is the limit over the value.
 *
 * @param least in the unit shown
 * @param most in the unit shown
 * @param percent the unit shown is per cent, so that a hundred is ideal above a lower limit
 */
public record LimitShare(OptionalDouble least, OptionalDouble most, boolean percent) {
    private static final double ALL = 100;

    /** @param scale from SI to the unit shown */
    public static LimitShare of(Limit limit, double scale, boolean percent) {
        return new LimitShare(scaled(limit.least(), scale), scaled(limit.most(), scale), percent);
    }

    private static OptionalDouble scaled(OptionalDouble value, double scale) {
        return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * scale) : value;
    }

    /** The share of a value in the unit shown; not a number where the limit leaves no room at all. */
    public double of(double value) {
        if (least.isPresent() && most.isPresent()) {
            double half = (most.getAsDouble() - least.getAsDouble()) / 2;
            return Math.abs(value - least.getAsDouble() - half) / half;
        }
        if (most.isPresent()) {
            return most.getAsDouble() == 0 ? Double.NaN : value / most.getAsDouble();
        }
        double limit = least.orElseThrow();
        if (percent && limit < ALL) {
            return (ALL - value) / (ALL - limit);
        }
        return value == 0 ? Double.POSITIVE_INFINITY : limit / value;
    }
}
