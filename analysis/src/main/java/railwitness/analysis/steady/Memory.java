package railwitness.analysis.steady;

import railwitness.analysis.uncertainty.Moments;

/**
 * How long the readings of one instrument resemble each other, learnt from all stretches of a session that were read at the
 * same spacing. Ten readings cannot tell chance from memory; the ten stretches of a session together can.
 */
public final class Memory {
    private static final int FEWEST_READINGS = 30;
    private static final int FEWEST_STRETCHES = 3;
    private static final int MOST_LAGS = 64;
    private static final double SAME_SPACING = 1.5;

    /** Readings that resemble each other for longer than this share of a stretch leave no mean to speak of. */
    private static final double MOST_OF_A_STRETCH = 0.5;

    /** Beyond this many standard deviations (99 %, two-sided) a stretch remembers longer than the others. */
    private static final double BEYOND_CHANCE = 2.576;

    private final double[] products = new double[MOST_LAGS];
    private final double[] sums = new double[MOST_LAGS];
    private final double[] weights = new double[MOST_LAGS];
    private final double[] counts = new double[MOST_LAGS];
    private int stretches;
    private double readings;
    private double spacings;

    /**
     * One stretch of the record; one with a trend, without scatter or under four readings teaches nothing.
     *
     * @param seconds time of each reading, not falling
     * @param values as many, finite
     */
    public void learn(double[] seconds, double[] values) {
        int n = values.length;
        if (n < 4
                || Moments.standardDeviation(values) == 0
                || !sameSpacing(seconds)
                || Drift.of(seconds, values).distinguishable()) {
            return;
        }
        Autocorrelation own = new Autocorrelation(values);
        for (int lag = 1; lag < Math.min(MOST_LAGS, n / 2 + 1); lag++) {
            double coefficient = own.at(lag) * n / (n - lag);
            products[lag] += n * coefficient;
            sums[lag] += coefficient;
            weights[lag] += n;
            counts[lag]++;
        }
        stretches++;
        readings += n;
        spacings += spacing(seconds);
    }

    private boolean sameSpacing(double[] seconds) {
        double ratio = stretches == 0 ? 1 : spacing(seconds) * stretches / spacings;
        return ratio < SAME_SPACING && ratio > 1 / SAME_SPACING;
    }

    private static double spacing(double[] seconds) {
        return (seconds[seconds.length - 1] - seconds[0]) / (seconds.length - 1);
    }

    /**
     * What the mean of a stretch is worth. Judged by the stretch alone where too little was learnt, where it was read at
     * another spacing, or where it plainly remembers longer than the others.
     */
    Worth worth(double[] seconds, double[] values) {
        int n = values.length;
        Autocorrelation own = new Autocorrelation(values);
        Worth alone = Worth.alone(own.effectiveCount(1));
        if (readings < FEWEST_READINGS || stretches < FEWEST_STRETCHES || n < 4 || !sameSpacing(seconds)) {
            return alone;
        }
        Times times = times();
        double share = times.ofMean() / n;
        double seen = own.at(1) * n / (n - 1) * (1 - share) + share;
        boolean longer = seen - coefficient(1, times.ofMean()) > BEYOND_CHANCE / Math.sqrt(n);
        return longer || share > MOST_OF_A_STRETCH
                ? alone
                : new Worth(n / times.ofMean(), Math.max(1, n / times.ofScatter() - 1));
    }

    /**
     * @param readings that are independent and would give as good a mean, at least 2
     * @param degreesOfFreedom of the scatter, at least 1
     */
    record Worth(double readings, double degreesOfFreedom) {
        static Worth alone(double readings) {
            return new Worth(readings, readings - 1);
        }
    }

    /** 1 + 2 sum(rho) and 1 + 2 sum(rho^2): by these a mean and a variance are worth less (Bartlett, 1946, from memory). */
    private record Times(double ofMean, double ofScatter) {}

    /** Summed over pairs of lags as long as they are positive, as {@link Autocorrelation} does. */
    private Times times() {
        double mean = 1;
        double scatter = 1;
        for (int pass = 0; pass < 4; pass++) {
            double sum = 1;
            double squares = 1;
            double before = 1;
            for (int lag = 1; lag + 1 < MOST_LAGS && weights[lag + 1] > 0; lag += 2) {
                double first = coefficient(lag, mean);
                double second = coefficient(lag + 1, mean);
                if (before + first <= 0 || first <= 0) {
                    break;
                }
                sum += 2 * (first + Math.max(0, second));
                squares += 2 * (first * first + second * second);
                before = second;
            }
            mean = Math.max(1, sum);
            scatter = squares;
        }
        return new Times(mean, scatter);
    }

    /**
     * Mean over the stretches, weighted by their readings. Deviations from a mean of the same n readings have the coefficient
     * (rho - t/n) / (1 - t/n), where t is the time above (expectation of the products of deviations); turned round.
     */
    private double coefficient(int lag, double time) {
        return (products[lag] - time * sums[lag] + time * counts[lag]) / weights[lag];
    }
}
