package railwitness.logger.reporting.comparing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.logger.reporting.chart.Chart;
import railwitness.logger.reporting.chart.Curve;
import railwitness.logger.reporting.chart.LimitLine;
import railwitness.logger.reporting.findings.SessionFindings;

/** The curves of all sessions over each other, and the control charts. */
public final class ComparisonCharts {
    private static final double COVERAGE = 0.95;
    private static final int MOST_NAMED = 6;

    private final Comparison comparison;
    private final DoubleFunction<String> number;

    public ComparisonCharts(Comparison comparison) {
        this(comparison, Print::plain);
    }

    /** @param number writes the numbers beside limits */
    public ComparisonCharts(Comparison comparison, DoubleFunction<String> number) {
        this.comparison = comparison;
        this.number = number;
    }

    /** One place of a curve. */
    private record Place(double x, double y, double expanded) {}

    /** Against load: each rail, efficiency, loss, each rail's ripple. */
    public List<Chart> overEachOther() {
        List<Chart> charts = new ArrayList<>();
        for (String rail : rails()) {
            railAgainstLoad(rail).ifPresent(charts::add);
        }
        efficiencyAgainstLoad().ifPresent(charts::add);
        lossAgainstLoad().ifPresent(charts::add);
        for (String rail : rails()) {
            rippleAgainstLoad(rail).ifPresent(charts::add);
        }
        return charts;
    }

    /** The rail's magnitude, V, over the power into the loads, W; empty where no session has two points. */
    public Optional<Chart> railAgainstLoad(String rail) {
        return chart(rail + " rail against load", "V", point -> point.rail(rail).stream()
                .map(RailPoint::voltage)
                .map(Estimate::abs)
                .toList());
    }

    /** In percent. */
    public Optional<Chart> efficiencyAgainstLoad() {
        return chart(
                "Efficiency against load",
                "%",
                point -> !point.stage().equals("no-load") && point.outputPower().value() > 0
                        ? point.efficiency().stream().map(e -> e.scale(100)).toList()
                        : List.of());
    }

    /** In watts. */
    public Optional<Chart> lossAgainstLoad() {
        return chart("Loss against load", "W", point -> List.of(point.loss()));
    }

    /** In millivolts rms. */
    public Optional<Chart> rippleAgainstLoad(String rail) {
        return chart(rail + " ripple against load", "mV", point -> point.rail(rail).stream()
                .flatMap(one -> one.rippleRms().stream())
                .map(ripple -> ripple.scale(1000))
                .toList());
    }

    /** All rails that one of the sessions has. */
    public Set<String> rails() {
        Set<String> rails = new LinkedHashSet<>();
        comparison.sessions().forEach(session -> session.findings()
                .points()
                .forEach(point -> rails.addAll(point.rails().keySet())));
        return rails;
    }

    private Optional<Chart> chart(String title, String unit, Function<OperatingPoint, List<Estimate>> value) {
        List<Curve> curves = new ArrayList<>();
        for (int i = 0; i < comparison.sessions().size(); i++) {
            List<Place> places = places(comparison.sessions().get(i), value);
            if (places.size() > 1) {
                curves.add(curve(i, places));
            }
        }
        return curves.isEmpty() ? Optional.empty() : Optional.of(new Chart(title, unit, "W", curves, List.of()));
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
                named ? Comparison.name(comparison, place) : "",
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

    /**
     * One figure in all sessions, in their order, each with its U: with its limits where there is a control chart of it,
     * and the moving ranges below. Nothing where no session has the figure.
     */
    public List<Chart> ofOne(Compared figure) {
        Optional<SisterChart> chart = comparison.chart(figure);
        if (chart.isPresent()) {
            return List.of(individuals(chart.get()), ranges(chart.get()));
        }
        int[] at = IntStream.range(0, figure.values().size())
                .filter(i -> figure.values().get(i).isPresent())
                .toArray();
        if (at.length == 0) {
            return List.of();
        }
        Compared shown = ChangeWords.shown(figure);
        List<Estimate> values =
                shown.values().stream().flatMap(Optional::stream).toList();
        Curve curve = new Curve(
                "",
                IntStream.of(at).mapToDouble(i -> i + 1).toArray(),
                values.stream().mapToDouble(Estimate::value).toArray(),
                values.stream().mapToDouble(ComparisonCharts::expanded).toArray(),
                false,
                OptionalInt.empty());
        return List.of(new Chart(shown.label(), shown.unit(), "", List.of(curve), List.of(), names(), Set.of()));
    }

    private Chart individuals(SisterChart chart) {
        Compared shown = ChangeWords.shown(chart.figure());
        double factor = factor(chart.figure());
        double[] values =
                chart.chart().values().stream().mapToDouble(one -> one * factor).toArray();
        double[] expanded = shown.values().stream()
                .mapToDouble(value -> expanded(value.orElseThrow()))
                .toArray();
        return new Chart(
                shown.label(),
                shown.unit(),
                "",
                List.of(
                        line("", 1, values, expanded),
                        mean(values.length, chart.chart().centre() * factor)),
                List.of(
                        new LimitLine(
                                "alike up to " + number.apply(chart.chart().upper() * factor),
                                chart.chart().upper() * factor,
                                false),
                        new LimitLine(
                                "alike from " + number.apply(chart.chart().lower() * factor),
                                chart.chart().lower() * factor,
                                true)),
                names(),
                chart.unlike().stream().map(place -> place + 1).collect(Collectors.toSet()));
    }

    private static double factor(Compared figure) {
        return railwitness.logger.reporting.findings.ShownUnit.of(
                        railwitness.analysis.design.FigureName.of(figure.name()))
                .factor();
    }

    private Curve mean(int count, double centre) {
        return new Curve(
                "mean " + number.apply(centre),
                new double[] {0.5, 0.75, count, count + 0.5},
                new double[] {centre, centre, centre, centre},
                new double[4],
                true,
                OptionalInt.empty());
    }

    private Chart ranges(SisterChart chart) {
        double factor = factor(chart.figure());
        double most = chart.chart().upperRange() * factor;
        double[] ranges = java.util.Arrays.stream(chart.chart().movingRanges())
                .map(one -> one * factor)
                .toArray();
        return new Chart(
                "From one to the next",
                ChangeWords.shown(chart.figure()).unit(),
                "",
                List.of(line("", 2, ranges, new double[ranges.length])),
                List.of(new LimitLine("alike up to " + number.apply(most), most, false)),
                names(),
                Set.of());
    }

    private List<String> names() {
        return IntStream.range(0, comparison.sessions().size())
                .mapToObj(place -> Comparison.name(comparison, place))
                .toList();
    }

    private static Curve line(String name, int first, double[] values, double[] expanded) {
        double[] at =
                IntStream.range(0, values.length).mapToDouble(i -> first + i).toArray();
        return new Curve(name, at, values, expanded, false, OptionalInt.empty());
    }
}
