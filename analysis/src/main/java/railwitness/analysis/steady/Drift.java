package railwitness.analysis.steady;

import org.hipparchus.distribution.continuous.TDistribution;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/**
 * The straight-line trend of a record.
 *
 * @param perSecond slope, with the scatter about the line as its uncertainty, autocorrelation reckoned with
 * @param spanSeconds length of the record, 0 or more
 * @param distinguishable whether the slope differs from zero at 1 %, two-sided, by Student's t
 */
public record Drift(Estimate perSecond, double spanSeconds, boolean distinguishable) {
    private static final double SIGNIFICANCE = 0.01;
    private static final double ROUNDING = 1e-12;

    /** Slope of the value against time, by least squares; at least three readings at rising times, else zero. */
    public static Drift of(double[] seconds, double[] readings) {
        Trend trend = new Trend(seconds, readings);
        double span = seconds[seconds.length - 1] - seconds[0];
        double dof = trend.degreesOfFreedom();
        Estimate slope = dof > 0 && trend.u() > 0
                ? Estimate.of(
                        trend.slope(),
                        Influence.student("scatter about the trend", trend.u(), "1/s", dof)
                                .times(1))
                : Estimate.exact(trend.slope());
        return new Drift(slope, span, distinguishable(trend, span));
    }

    private static boolean distinguishable(Trend trend, double span) {
        double dof = trend.degreesOfFreedom();
        double change = Math.abs(trend.slope()) * span;
        if (!(dof > 0) || change <= ROUNDING * trend.magnitude()) {
            return false;
        }
        double t = new TDistribution(dof).inverseCumulativeProbability(1 - SIGNIFICANCE / 2);
        return Math.abs(trend.slope()) > t * trend.u();
    }

    /** Change from end to end of the record, in the unit of the readings. */
    public Estimate overSpan() {
        return perSecond.scale(spanSeconds);
    }

    /** Change per hour. */
    public Estimate perHour() {
        return perSecond.scale(3600);
    }
}
