package railwitness.analysis.uncertainty;

import java.util.Arrays;
import java.util.List;

/**
 * One-way analysis of variance over groups of readings, of equal size or not (GUM H.5): does the mean move between
 * groups (days, warm-ups) by more than the readings scatter within them?
 */
public final class OneWay {
    private final double[] means;
    private final int[] counts;
    private final double within;
    private final double between;
    private final double grandMean;
    private final int total;

    /** @param groups two or more, each of two or more readings */
    public OneWay(List<double[]> groups) {
        Arguments.unlessAtLeast("number of groups", groups.size(), 2);
        groups.forEach(group -> Arguments.unlessAtLeast("readings in a group", group.length, 2));
        means = groups.stream().mapToDouble(Moments::mean).toArray();
        counts = groups.stream().mapToInt(group -> group.length).toArray();
        total = Arrays.stream(counts).sum();
        grandMean = Moments.mean(groups.stream().flatMapToDouble(Arrays::stream).toArray());
        within = groups.stream()
                .mapToDouble(g -> Math.pow(Moments.standardDeviation(g), 2) * (g.length - 1))
                .sum();
        double sum = 0;
        for (int j = 0; j < means.length; j++) {
            sum += counts[j] * Math.pow(means[j] - grandMean, 2);
        }
        between = sum;
    }

    public double betweenSumOfSquares() {
        return between;
    }

    public double withinSumOfSquares() {
        return within;
    }

    public int betweenDegreesOfFreedom() {
        return means.length - 1;
    }

    public int withinDegreesOfFreedom() {
        return total - means.length;
    }

    /** Pooled standard deviation within groups. */
    public double withinStandardDeviation() {
        return Math.sqrt(within / withinDegreesOfFreedom());
    }

    /** Between mean square over within mean square; infinite where nothing scatters within. */
    public double f() {
        return between / betweenDegreesOfFreedom() / (within / withinDegreesOfFreedom());
    }

    /** Standard deviation of the effect that moves whole groups, 0 where none shows. */
    public double betweenEffect() {
        double meanSquares = between / betweenDegreesOfFreedom() - within / withinDegreesOfFreedom();
        return Math.sqrt(Math.max(0, meanSquares / effectiveGroupSize()));
    }

    private double effectiveGroupSize() {
        double squares = Arrays.stream(counts).mapToDouble(n -> (double) n * n).sum();
        return (total - squares / total) / betweenDegreesOfFreedom();
    }

    /** Mean of the groups' means where groups differ: scatter of those means, one less than groups (GUM H.5.2.4). */
    public Estimate meanOfGroups() {
        double u = Moments.standardDeviation(means) / Math.sqrt(means.length);
        return Estimate.of(
                Moments.mean(means),
                Influence.student("scatter between groups", u, "1", betweenDegreesOfFreedom())
                        .times(1));
    }

    /** Mean of all readings where groups do not differ: all scatter pooled (GUM H.5.2.5). */
    public Estimate meanOfAll() {
        double u = Math.sqrt((between + within) / (total - 1) / total);
        return Estimate.of(
                grandMean,
                Influence.student("scatter of readings", u, "1", total - 1).times(1));
    }
}
