package railwitness.analysis.steady;

import java.util.ArrayList;
import java.util.List;
import railwitness.analysis.uncertainty.Moments;

/** How much each reading of an evenly spaced record resembles those before it. */
public final class Autocorrelation {
    private static final int LARGEST_BLOCKED = 4096;

    private final double[] deviations;
    private final double squares;

    /** @param readings evenly spaced, at least one, all finite */
    public Autocorrelation(double... readings) {
        double mean = Moments.mean(readings);
        deviations = new double[readings.length];
        double sum = 0;
        for (int i = 0; i < readings.length; i++) {
            deviations[i] = readings[i] - mean;
            sum += deviations[i] * deviations[i];
        }
        squares = sum;
    }

    /**
     * Coefficient at a lag of 0 or more readings: sum of products of deviations over the sum of their squares, as the
     * NIST StRD certifies it; 0 where nothing scatters.
     */
    public double at(int lag) {
        double sum = 0;
        for (int i = 0; i + lag < deviations.length; i++) {
            sum += deviations[i] * deviations[i + lag];
        }
        return squares == 0 ? 0 : sum / squares;
    }

    /**
     * How many independent readings the mean is worth: n over the time 1 + 2 sum(rho), the sum taken over pairs of
     * lags as long as they are positive (Geyer, Statistical Science 7 (1992) 473, initial positive sequence), each
     * coefficient corrected for the mean (or line) that was taken from the same readings. Never above n, nor below 2.
     *
     * @param lost parameters already fitted: 1 for a mean, 2 for a straight line
     */
    double effectiveCount(int lost) {
        int n = deviations.length;
        if (n < 4 || squares == 0) {
            return n;
        }
        double time = 1;
        List<Double> coefficients = new ArrayList<>(List.of(1.0));
        for (int pass = 0; pass < 4; pass++) {
            time = Math.max(1, time(lost * time / n, coefficients));
        }
        return Math.max(2, Math.min(n, n / time));
    }

    /**
     * How many independent readings a record of residuals is worth, long records taken in blocks.
     *
     * @param fitted parameters already fitted to the record, 1 or more
     */
    public static double worth(double[] residuals, int fitted) {
        double[] blocks = blocked(residuals);
        double count = new Autocorrelation(blocks).effectiveCount(fitted);
        return Math.min(residuals.length, count * meanSquare(residuals, 1) / meanSquare(blocks, 0));
    }

    private static double meanSquare(double[] values, double whereNothingScatters) {
        double sum = 0;
        for (double value : values) {
            sum += value * value;
        }
        return sum == 0 ? whereNothingScatters : sum / values.length;
    }

    private double time(double bias, List<Double> coefficients) {
        double sum = -1;
        for (int lag = 0; lag + 1 < Math.max(2, deviations.length / 2); lag += 2) {
            while (coefficients.size() <= lag + 1) {
                coefficients.add(at(coefficients.size()));
            }
            double pair = corrected(coefficients, lag, bias) + corrected(coefficients, lag + 1, bias);
            if (pair <= 0) {
                break;
            }
            sum += 2 * pair;
        }
        return sum;
    }

    private static double corrected(List<Double> coefficients, int lag, double bias) {
        return lag == 0 ? 1 : (coefficients.get(lag) + bias) / (1 + bias);
    }

    /** The record itself, or where it is long the means of some two thousand equal stretches of it. */
    public static double[] blocked(double[] readings) {
        int n = readings.length;
        if (n <= LARGEST_BLOCKED) {
            return readings;
        }
        int blocks = LARGEST_BLOCKED / 2;
        double[] means = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            int from = (int) ((long) b * n / blocks);
            int to = (int) ((long) (b + 1) * n / blocks);
            double sum = 0;
            for (int i = from; i < to; i++) {
                sum += readings[i] - readings[from];
            }
            means[b] = readings[from] + sum / (to - from);
        }
        return means;
    }
}
