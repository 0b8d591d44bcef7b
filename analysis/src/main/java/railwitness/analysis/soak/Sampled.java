package railwitness.analysis.soak;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Times and values without holes, as many of each.
 *
 * @param seconds rising
 * @param columns one array per quantity, all as long as the times
 */
record Sampled(double[] seconds, double[]... columns) {
    /** Keeps the rows in which every column has a number, at or after a time. */
    static Sampled of(double fromSeconds, double[] seconds, double[]... columns) {
        int[] kept = IntStream.range(0, seconds.length)
                .filter(i -> seconds[i] >= fromSeconds)
                .filter(i -> Arrays.stream(columns).allMatch(column -> Double.isFinite(column[i])))
                .toArray();
        double[][] out = new double[columns.length][];
        for (int c = 0; c < columns.length; c++) {
            out[c] = pick(columns[c], kept);
        }
        return new Sampled(pick(seconds, kept), out);
    }

    private static double[] pick(double[] values, int[] kept) {
        return Arrays.stream(kept).mapToDouble(i -> values[i]).toArray();
    }

    int size() {
        return seconds.length;
    }

    /** Means over at most so many groups of neighbours. */
    Sampled gathered(int most) {
        if (size() <= most) {
            return this;
        }
        double[][] out = new double[columns.length][];
        for (int c = 0; c < columns.length; c++) {
            out[c] = means(columns[c], most);
        }
        return new Sampled(means(seconds, most), out);
    }

    private static double[] means(double[] values, int groups) {
        double[] out = new double[groups];
        for (int g = 0; g < groups; g++) {
            int from = (int) ((long) g * values.length / groups);
            int to = (int) ((long) (g + 1) * values.length / groups);
            double sum = 0;
            for (int i = from; i < to; i++) {
                sum += values[i] - values[from];
            }
            out[g] = values[from] + sum / (to - from);
        }
        return out;
    }
}
