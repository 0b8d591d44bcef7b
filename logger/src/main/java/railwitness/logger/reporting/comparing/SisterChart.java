package railwitness.logger.reporting.comparing;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import railwitness.analysis.sisters.IndividualsChart;
import railwitness.analysis.sisters.OutlyingValue;

/**
 * One figure of many units on a control chart.
 *
 * @param figure with a value in every session
 * @param chart in the order of the sessions
 * @param furthest the unit furthest from the mean
 */
public record SisterChart(Compared figure, IndividualsChart chart, OutlyingValue furthest) {
    /** One in a hundred sets of like units has one that is called unlike by chance, for each figure. */
    public static final double RISK = 0.01;

    static SisterChart of(Compared figure) {
        double[] values = figure.values().stream()
                .mapToDouble(value -> value.orElseThrow().value())
                .toArray();
        return new SisterChart(figure, IndividualsChart.of(values), OutlyingValue.of(RISK, values));
    }

    /** Places of the units unlike the others in this figure, counted from zero. */
    public Set<Integer> unlike() {
        Set<Integer> unlike = new LinkedHashSet<>(chart.outside());
        if (furthest.outlying()) {
            unlike.add(furthest.place());
        }
        return unlike;
    }

    /** How the unit shows that it is unlike the others, in words. */
    public List<String> reasons(int place) {
        List<String> reasons = new java.util.ArrayList<>();
        if (chart.outside().contains(place)) {
            reasons.add("outside the chart's limits");
        }
        if (furthest.outlying() && furthest.place() == place) {
            reasons.add("outlying by Grubbs' test at 1 %");
        }
        return reasons;
    }
}
