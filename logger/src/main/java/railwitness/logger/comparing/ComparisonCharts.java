package railwitness.logger.comparing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.logger.chart.Chart;
import railwitness.logger.chart.Curve;
import railwitness.logger.chart.LimitLine;
import railwitness.logger.findings.SessionFindings;

/** The curves of all sessions over each other, and the control charts. */
final class ComparisonCharts {
    private static final double COVERAGE = 0.95;
    private static final int MOST_NAMED = 6;

    private final Comparison comparison;

    ComparisonCharts(Comparison comparison) {
        this.comparison = comparison;
    }

    /** One place of a curve. */
    private record Place(double x, double y, double expanded) {}

    /** Against load: each rail, efficiency, loss, each rail's ripple. */
    List<Chart> overEachOther() {
        List<Chart> charts = new ArrayList<>();
        for (String rail : rails()) {
            add(charts, rail + " rail against load", "V", point -> point.rail(rail).stream()
                    .map(RailPoint::voltage)
                    .map(Estimate::abs)
                    .toList());
        }
        add(
                charts,
                "Efficiency against load",
                "%",
                point -> point.outputPower().value() > 0
                        ? point.efficiency().stream().map(e -> e.scale(100)).toList()
                        : List.of());
        add(charts, "Loss against load", "W", point -> List.of(point.loss()));
        for (String rail : rails()) {
            add(charts, rail + " ripple against load", "mV", point -> point.rail(rail).stream()
                    .flatMap(one -> one.rippleRms().stream())
                    .map(ripple -> ripple.scale(1000))
                    .toList());
        }
        return charts;
    }

    private Set<String> rails() {
        Set<String> rails = new LinkedHashSet<>();
        comparison.sessions().forEach(session -> session.findings()
                .points()
                .forEach(point -> rails.addAll(point.rails().keySet())));
        return rails;
    }

    private void add(List<Chart> charts, String title, String unit, Function<OperatingPoint, List<Estimate>> value) {
        List<Curve> curves = new ArrayList<>();
        for (int i = 0; i < comparison.sessions().size(); i++) {
            List<Place> places = places(comparison.sessions().get(i), value);
            if (places.size() > 1) {
                curves.add(curve(i, places));
            }
        }
        if (!curves.isEmpty()) {
            charts.add(new Chart(title, unit, "W", curves, List.of()));
        }
    }

    /** No-load and load sweep, by power into the loads; a repeated step is left out. */
    private static List<Place> places(SessionFindings session, Function<OperatingPoint, List<Estimate>> value) {
        return session.findings().points().stream()
                .filter(point ->
                        point.stage().equals("no-load") || point.stage().equals("load-sweep"))
                .filter(point -> !point.step().endsWith(" again"))
                .flatMap(point -> value.apply(point).stream()
                        .map(one -> new Place(point.outputPower().value(), one.value(), expanded(one))))
                .sorted(Comparator.comparingDouble(Place::x))
                .toList();
    }

    private static double expanded(Estimate value) {
        return value.known() ? value.coverage(COVERAGE).expanded() : 0;
    }

    private Curve curve(int place, List<Place> places) {
        boolean named = comparison.sessions().size() <= MOST_NAMED
                || comparison.unlike().containsKey(place);
        return new Curve(
                named ? Comparison.letter(place) : "",
                places.stream().mapToDouble(Place::x).toArray(),
                places.stream().mapToDouble(Place::y).toArray(),
                places.stream().mapToDouble(Place::expanded).toArray(),
                false,
                OptionalInt.of(place));
    }

    /** Individuals above, moving ranges below, of the figures in which a unit is unlike the others, else of the first. */
    List<Chart> control() {
        List<SisterChart> shown = comparison.charts().stream()
                .filter(chart -> !chart.unlike().isEmpty())
                .toList();
        if (shown.isEmpty()) {
            shown = comparison.charts().stream().limit(2).toList();
        }
        List<Chart> charts = new ArrayList<>();
        for (SisterChart chart : shown) {
            charts.add(individuals(chart));
            charts.add(ranges(chart));
        }
        return charts;
    }

    private static Chart individuals(SisterChart chart) {
        double[] values =
                chart.chart().values().stream().mapToDouble(Double::doubleValue).toArray();
        return new Chart(
                chart.figure().label(),
                chart.figure().unit(),
                "",
                List.of(line("", 1, values)),
                List.of(
                        new LimitLine(
                                "upper " + Print.plain(chart.chart().upper()),
                                chart.chart().upper(),
                                false),
                        new LimitLine(
                                "mean " + Print.plain(chart.chart().centre()),
                                chart.chart().centre(),
                                false),
                        new LimitLine(
                                "lower " + Print.plain(chart.chart().lower()),
                                chart.chart().lower(),
                                true)));
    }

    private static Chart ranges(SisterChart chart) {
        double most = chart.chart().upperRange();
        return new Chart(
                "Moving range",
                chart.figure().unit(),
                "",
                List.of(line("", 2, chart.chart().movingRanges())),
                List.of(new LimitLine("limit " + Print.plain(most), most, false)));
    }

    private static Curve line(String name, int first, double[] values) {
        double[] at =
                IntStream.range(0, values.length).mapToDouble(i -> first + i).toArray();
        return new Curve(name, at, values, new double[values.length], false, OptionalInt.empty());
    }
}
