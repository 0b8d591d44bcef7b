package railwitness.analysis.steady;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;
import railwitness.analysis.uncertainty.Moments;
import railwitness.analysis.uncertainty.Term;

/**
 * Mean of readings that need not be independent.
 *
 * @param mean with its Type A uncertainty, and with the drift's where one shows; no instrument's accuracy is in it
 * @param count how many readings, 1 or more
 * @param effectiveCount how many independent readings they are worth, at most {@code count}
 * @param standardDeviation of the single reading, 0 for one reading
 * @param drift the trend over the average; where it is distinguishable the average says so
 */
public record Average(Estimate mean, int count, double effectiveCount, double standardDeviation, Drift drift) {

    /**
     * Averages a record taken at even spacing.
     *
     * <p>One reading gives a mean without scatter. Readings that never change have none to show either: what stays
     * is the instrument's resolution, which belongs to its accuracy. Where a drift shows, the scatter is that about
     * the trend, and half of the way drifted is taken as a rectangle.
     *
     * @param name printed in budgets, such as "plus.voltage, step 3"
     * @param unit of the readings
     * @param seconds time of each reading, not falling
     * @param readings finite, at least one
     */
    public static Average of(String name, String unit, double[] seconds, double[] readings) {
        return of(name, unit, seconds, readings, new Memory());
    }

    /**
     * As {@link #of(String, String, double[], double[])}.
     *
     * @param memory what other stretches of the same instrument's readings have taught
     */
    public static Average of(String name, String unit, double[] seconds, double[] readings, Memory memory) {
        int n = readings.length;
        double mean = Moments.mean(readings);
        Drift drift = Drift.of(seconds, readings);
        double deviation = n > 1 ? Moments.standardDeviation(readings) : 0;
        if (n == 1 || deviation == 0) {
            return new Average(Estimate.exact(mean), n, n, 0, drift);
        }
        if (drift.distinguishable()) {
            return drifting(name, unit, new Trend(seconds, readings), mean, deviation, drift, n);
        }
        double[] blocks = Autocorrelation.blocked(readings);
        Memory.Worth worth = blocks.length == n
                ? memory.worth(seconds, readings)
                : Memory.Worth.alone(new Autocorrelation(blocks).effectiveCount(1));
        double u = populationDeviation(blocks) / Math.sqrt(worth.readings() - 1);
        Estimate estimate = Estimate.of(mean, scatter(name, unit, u, worth.degreesOfFreedom(), mean));
        double effective = Math.min(n, Math.max(1, deviation * deviation / (u * u)));
        return new Average(estimate, n, effective, deviation, drift);
    }

    /** As {@link #of(String, String, double[], double[])}, for readings one second apart. */
    public static Average of(String name, String unit, double... readings) {
        double[] seconds = new double[readings.length];
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = i;
        }
        return of(name, unit, seconds, readings);
    }

    private static Average drifting(
            String name, String unit, Trend trend, double mean, double deviation, Drift drift, int n) {
        double halfWay = Math.abs(drift.overSpan().value()) / 2;
        Estimate estimate = Estimate.of(
                mean,
                scatter(name, unit, trend.uOfMiddle(), trend.degreesOfFreedom(), mean),
                Influence.rectangular("drift over the average of " + name, halfWay, unit)
                        .times(1));
        return new Average(estimate, n, trend.effectiveCount(), deviation, drift);
    }

    private static Term scatter(String name, String unit, double u, double dof, double mean) {
        return Influence.student("scatter of " + name, u, unit, dof).of(mean).times(1);
    }

    private static double populationDeviation(double[] values) {
        double n = values.length;
        return Moments.standardDeviation(values) * Math.sqrt((n - 1) / n);
    }

    /**
     * Means of quantities read together at even spacing, correlated as the readings were (GUM H.2), each worth as many
     * independent readings as the least independent of them. Trends are not taken out.
     *
     * @param series one array per quantity, all of the same length, 2 or more
     */
    public static List<Estimate> together(String name, List<double[]> series) {
        List<double[]> blocks = series.stream().map(Autocorrelation::blocked).toList();
        int n = blocks.get(0).length;
        double worth = blocks.stream()
                .mapToDouble(block -> new Autocorrelation(block).effectiveCount(1))
                .min()
                .orElseThrow();
        List<Estimate> independent = Estimate.fromSimultaneous(name, blocks);
        double[][] covariance = new double[series.size()][series.size()];
        double[] means = new double[series.size()];
        for (int i = 0; i < means.length; i++) {
            means[i] = Moments.mean(series.get(i));
            for (int j = 0; j < means.length; j++) {
                covariance[i][j] = independent.get(i).covariance(independent.get(j)) * (n - 1) / (worth - 1);
            }
        }
        return Estimate.fromCovariance(name, means, covariance, worth - 1);
    }

    /** One line for print: how many readings, their worth, and a drift where one shows. */
    public List<String> remarks() {
        List<String> remarks = new ArrayList<>();
        if (effectiveCount < count / 2.0) {
            remarks.add(String.format(Locale.ROOT, "%d readings, worth %.1f independent ones", count, effectiveCount));
        }
        if (drift.distinguishable()) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "averaged over a drift of %.3g in %.3g s",
                    drift.overSpan().value(),
                    drift.spanSeconds()));
        }
        return List.copyOf(remarks);
    }
}
