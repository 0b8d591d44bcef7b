package railwitness.logger.reporting.comparing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import railwitness.analysis.sisters.IndividualsChart;
import railwitness.analysis.sisters.OutlyingValue;

/**
 * One figure of many units on a control chart.
 *
 * @param figure with a value in every session
 * @param chart in the order of time
 * @param leftOut places that the limits were worked out without, because they gave a signal
 * @param furthest the unit furthest from the mean
 */
public record SisterChart(Compared figure, IndividualsChart chart, OutlyingValue furthest, Set<Integer> leftOut) {
    /** One in a hundred sets of like units has one that is called unlike by chance, for each figure. */
    public static final double RISK = 0.01;

    /** Leaving out more than this share of the units leaves no base to judge by. */
    private static final double MOST_LEFT_OUT = 0.25;

    static SisterChart of(Compared figure) {
        double[] values = figure.values().stream()
                .mapToDouble(value -> value.orElseThrow().value())
                .toArray();
        OutlyingValue furthest = OutlyingValue.of(RISK, values);
        Set<Integer> leftOut = new TreeSet<>();
        IndividualsChart chart = IndividualsChart.of(values);
        Set<Integer> signals = signals(chart, furthest);
        while (!leftOut.containsAll(signals) && signals.size() <= MOST_LEFT_OUT * values.length) {
            leftOut.addAll(signals);
            chart = IndividualsChart.of(leftOut, values);
            signals = signals(chart, furthest);
        }
        return new SisterChart(figure, chart, furthest, leftOut);
    }

    private static Set<Integer> signals(IndividualsChart chart, OutlyingValue furthest) {
        Set<Integer> signals = new LinkedHashSet<>(chart.outside());
        if (furthest.outlying()) {
            signals.add(furthest.place());
        }
        return signals;
    }

    /** Places of the units unlike the others in this figure, counted from zero. */
    public Set<Integer> unlike() {
        return signals(chart, furthest);
    }

    /** How the unit shows that it is unlike the others: the rule by which it was found, in words. */
    public List<String> reasons(int place) {
        List<String> reasons = new ArrayList<>();
        if (chart.outside().contains(place)) {
            reasons.add("beyond the chart's limits" + (leftOut.contains(place) ? ", which it was left out of" : ""));
        }
        if (furthest.outlying() && furthest.place() == place) {
            reasons.add("outlying by Grubbs' test at 1 %");
        }
        return reasons;
    }
}
