package railwitness.analysis.steady;

import java.util.Locale;

/**
 * When a running step counts as settled: the slope is not distinguishable from zero (two-sided, 10 %, Student's t
 * with the residuals' lag-1 autocorrelation reckoned with), or it moves the value by a negligible part only.
 *
 * <p>Choose the window no shorter than the slowest time constant that matters: an approach twice as slow as the window
 * is long is called settled with some two standard deviations of a reading still to go.
 *
 * @param windowSeconds the slope is that of the last so many seconds, above 0
 * @param leastReadings and of no fewer than so many readings, 4 or more
 * @param negligibleFraction change over the window, as a fraction of the value, that does not matter: 0 to below 1
 */
public record SettlingRule(double windowSeconds, int leastReadings, double negligibleFraction) {
    /** Two-sided significance of the slope. */
    static final double SIGNIFICANCE = 0.10;

    public SettlingRule {
        if (!(windowSeconds > 0 && windowSeconds < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("settling window is " + windowSeconds + " s: must be above 0");
        }
        if (leastReadings < 4) {
            throw new IllegalArgumentException("least readings to settle is " + leastReadings + ": must be 4 or more");
        }
        if (!(negligibleFraction >= 0 && negligibleFraction < 1)) {
            throw new IllegalArgumentException(
                    "negligible fraction is " + negligibleFraction + ": must be 0 or more and below 1");
        }
    }

    /** The rule of a short step: at least eight readings, 0.01 % does not matter. */
    public static SettlingRule overLast(double windowSeconds) {
        return new SettlingRule(windowSeconds, 8, 1e-4);
    }

    /** The rule's name, for print. */
    public String words() {
        return String.format(
                Locale.ROOT,
                "slope not distinguishable from zero (10 %% two-sided, last %.3g s, %d readings or more)"
                        + " or below %.3g %% over that time",
                windowSeconds,
                leastReadings,
                100 * negligibleFraction);
    }
}
