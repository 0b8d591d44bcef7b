package railwitness.analysis.sisters;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Control chart for individuals and moving ranges of two, as ISO 7870-2 and NIST/SEMATECH e-Handbook 6.3.2.2 give it:
 * centre at the mean, limits three standard deviations away, that deviation being the mean moving range over d2.
 *
 * @param values one for each unit, in the order in which they came, two or more
 * @param centre their mean
 * @param meanRange mean of the moving ranges
 * @param lower limit of the individuals
 * @param upper limit of the individuals
 * @param upperRange limit of the moving ranges; their lower limit is zero
 */
public record IndividualsChart(
        List<Double> values, double centre, double meanRange, double lower, double upper, double upperRange) {
    /** Mean range of two over the standard deviation, for normal values (ISO 7870-2, table of constants). */
    public static final double D2 = 1.128;

    /** Upper limit of a range of two over the mean range (ISO 7870-2, table of constants). */
    public static final double D4 = 3.267;

    public IndividualsChart {
        values = List.copyOf(values);
    }

    /** @throws IllegalArgumentException for less than two values or one that is not finite */
    public static IndividualsChart of(double... values) {
        return of(Set.of(), values);
    }

    /**
     * With limits from a base that leaves some values out, such as those with a known cause: left in, they widen the
     * limits that should find them.
     *
     * @param leftOut places, counted from zero; two values or more must be left
     */
    public static IndividualsChart of(Set<Integer> leftOut, double... values) {
        if (values.length < 2) {
            throw new IllegalArgumentException(values.length + " values must be two or more for a control chart");
        }
        for (double value : values) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("value " + value + " of a control chart must be finite");
            }
        }
        double[] base = IntStream.range(0, values.length)
                .filter(i -> !leftOut.contains(i))
                .mapToDouble(i -> values[i])
                .toArray();
        if (base.length < 2) {
            throw new IllegalArgumentException(
                    base.length + " values are left as the base of a control chart; two or" + " more must be");
        }
        double centre = Arrays.stream(base).average().orElseThrow();
        double meanRange = Arrays.stream(ranges(base)).average().orElseThrow();
        double away = 3 * meanRange / D2;
        return new IndividualsChart(
                Arrays.stream(values).boxed().toList(),
                centre,
                meanRange,
                centre - away,
                centre + away,
                D4 * meanRange);
    }

    private static double[] ranges(double[] values) {
        return IntStream.range(1, values.length)
                .mapToDouble(i -> Math.abs(values[i] - values[i - 1]))
                .toArray();
    }

    /** Distance of each value from the one before it; one fewer than there are values. */
    public double[] movingRanges() {
        return ranges(values.stream().mapToDouble(Double::doubleValue).toArray());
    }

    /** Places of the values outside the limits, counted from zero. */
    public List<Integer> outside() {
        return IntStream.range(0, values.size())
                .filter(i -> values.get(i) < lower || values.get(i) > upper)
                .boxed()
                .toList();
    }

    /** Places of the values that lie further from the one before than the ranges' limit, counted from zero. */
    public List<Integer> jumps() {
        double[] ranges = movingRanges();
        return IntStream.range(0, ranges.length)
                .filter(i -> ranges[i] > upperRange)
                .mapToObj(i -> i + 1)
                .toList();
    }
}
