package railwitness.analysis.steady;

import railwitness.analysis.uncertainty.Moments;

/** Straight line through a record, with the worth of its residuals. */
final class Trend {
    private final double mean;
    private final double slope;
    private final double spread;
    private final double[] residuals;
    private final double squares;
    private final double effectiveCount;

    Trend(double[] seconds, double[] readings) {
        if (seconds.length != readings.length) {
            throw new IllegalArgumentException(
                    seconds.length + " times for " + readings.length + " readings: must be as many");
        }
        double middle = Moments.mean(seconds);
        mean = Moments.mean(readings);
        double sxx = 0;
        double sxy = 0;
        for (int i = 0; i < seconds.length; i++) {
            if (i > 0 && !(seconds[i] >= seconds[i - 1])) {
                throw new IllegalArgumentException("time of reading " + (i + 1) + " is " + seconds[i]
                        + " s: must not lie before the one ahead of it, " + seconds[i - 1] + " s");
            }
            sxx += (seconds[i] - middle) * (seconds[i] - middle);
            sxy += (seconds[i] - middle) * (readings[i] - mean);
        }
        spread = sxx;
        slope = sxx == 0 ? 0 : sxy / sxx;
        residuals = new double[readings.length];
        double sum = 0;
        for (int i = 0; i < readings.length; i++) {
            residuals[i] = readings[i] - mean - slope * (seconds[i] - middle);
            sum += residuals[i] * residuals[i];
        }
        squares = sum;
        effectiveCount = Autocorrelation.worth(residuals, 2);
    }

    double slope() {
        return slope;
    }

    double magnitude() {
        return Math.abs(mean);
    }

    double effectiveCount() {
        return effectiveCount;
    }

    double degreesOfFreedom() {
        return spread == 0 ? 0 : effectiveCount - 2;
    }

    /** Variance of one reading about the line. */
    private double variance() {
        return squares / residuals.length / (1 - 2 / effectiveCount);
    }

    /** Standard uncertainty of the slope; 0 where two readings leave nothing to judge by. */
    double u() {
        return degreesOfFreedom() > 0 ? Math.sqrt(variance() * residuals.length / effectiveCount / spread) : 0;
    }

    /** Standard uncertainty of the height of the line in its middle. */
    double uOfMiddle() {
        return degreesOfFreedom() > 0 ? Math.sqrt(variance() / effectiveCount) : 0;
    }
}
