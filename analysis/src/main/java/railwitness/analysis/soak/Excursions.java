package railwitness.analysis.soak;

import java.util.Arrays;

/** How often a channel left its band for a moment: spikes that no mean shows. */
public final class Excursions {
    private static final int NEIGHBOURS = 4;
    private static final double SPREADS = 4;

    private Excursions() {}

    /**
     * Counts stretches of columns whose lowest or highest lies far from the columns around.
     *
     * @param lowest of each column, NaN where nothing was read
     * @param mean of each column, NaN likewise
     * @param highest of each column
     * @param allowance what is no excursion whatever the scatter, in the channel's unit, above 0
     */
    public static int count(double[] lowest, double[] mean, double[] highest, double allowance) {
        int n = mean.length;
        double[] widths = new double[n];
        int read = 0;
        for (int i = 0; i < n; i++) {
            if (Double.isFinite(mean[i])) {
                widths[read++] = highest[i] - lowest[i];
            }
        }
        double usual = median(Arrays.copyOf(widths, read));
        int count = 0;
        boolean outside = false;
        for (int i = 0; i < n; i++) {
            if (!Double.isFinite(mean[i])) {
                continue;
            }
            double around = around(mean, i);
            double far = Math.max(highest[i] - around, around - lowest[i]);
            boolean out = far > SPREADS * usual + allowance;
            count += out && !outside ? 1 : 0;
            outside = out;
        }
        return count;
    }

    private static double around(double[] mean, int at) {
        double[] near = new double[2 * NEIGHBOURS + 1];
        int kept = 0;
        for (int i = Math.max(0, at - NEIGHBOURS); i <= Math.min(mean.length - 1, at + NEIGHBOURS); i++) {
            if (Double.isFinite(mean[i])) {
                near[kept++] = mean[i];
            }
        }
        return median(Arrays.copyOf(near, kept));
    }

    private static double median(double[] values) {
        if (values.length == 0) {
            return 0;
        }
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
