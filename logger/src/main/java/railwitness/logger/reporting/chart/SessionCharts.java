package railwitness.logger.reporting.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.SheetRequirement;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.Points;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * The pictures of a session's operating points. Rails are drawn by their magnitudes, so that both can be seen together;
 * the prediction is taken at the input terminals' voltage as it was measured. Each is empty where fewer than two points
 * can be drawn.
 */
public final class SessionCharts {
    private static final int PREDICTED_PLACES = 41;
    private static final double SAME_LOAD = 0.025;

    private final Points points;
    private final Optional<Design> design;
    private final List<OperatingPoint> sweep;

    public SessionCharts(SessionFindings session) {
        this.points = new Points(session.findings().points(), session.design());
        this.design = session.design();
        this.sweep = points.sweep().stream()
                .filter(point -> load(point).isPresent())
                .sorted(Comparator.comparingDouble(point -> load(point).getAsDouble()))
                .toList();
    }

    /** Percent of full load; without any load zero. */
    private OptionalDouble load(OperatingPoint point) {
        OptionalDouble fraction = points.fraction(point);
        return fraction.isPresent() ? OptionalDouble.of(100 * fraction.getAsDouble()) : OptionalDouble.empty();
    }

    /** Magnitudes of the rails, V, against percent of full load. */
    public Optional<Chart> railsAgainstLoad() {
        return drawn(
                "Rails against load", "V", "%", sweep, this::percent, railCurves(sweep, this::percent), railLimits());
    }

    /** Percent, against percent of full load; points without load left out. */
    public Optional<Chart> efficiencyAgainstLoad() {
        List<OperatingPoint> loaded = points.loaded().stream()
                .filter(point -> load(point).isPresent() && point.efficiency().isPresent())
                .sorted(Comparator.comparingDouble(this::percent))
                .toList();
        Function<OperatingPoint, Estimate> value =
                point -> point.efficiency().orElseThrow().scale(100);
        List<Curve> curves = new ArrayList<>();
        curves.add(curve("", loaded, this::percent, value, OptionalInt.empty()));
        predicted(loaded, Prediction::efficiency, 100).ifPresent(curves::add);
        return drawn("Efficiency against load", "%", "%", loaded, this::percent, curves, efficiencyLimits());
    }

    /** Input less output power, W, against percent of full load. */
    public Optional<Chart> lossAgainstLoad() {
        List<Curve> curves = new ArrayList<>();
        curves.add(curve("", sweep, this::percent, OperatingPoint::loss, OptionalInt.empty()));
        predicted(sweep, Prediction::loss, 1).ifPresent(curves::add);
        return drawn("Loss against load", "W", "%", sweep, this::percent, curves, List.of());
    }

    /** Magnitudes of the rails, V, against the input's voltage, at the line sweep's load. */
    public Optional<Chart> railsAgainstInput() {
        List<OperatingPoint> line = new ArrayList<>(points.stage("line-sweep"));
        OptionalDouble fraction = line.stream()
                .map(points::fraction)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .average();
        if (fraction.isPresent()) {
            sweep.stream()
                    .filter(point -> Math.abs(percent(point) / 100 - fraction.getAsDouble()) < SAME_LOAD)
                    .findFirst()
                    .ifPresent(line::add);
        }
        ToDoubleFunction<OperatingPoint> input =
                point -> point.input().voltage().value();
        line.sort(Comparator.comparingDouble(input));
        String title = fraction.isPresent()
                ? String.format(Locale.ROOT, "Rails against input at %.0f %% load", 100 * fraction.getAsDouble())
                : "Rails against input";
        return drawn(title, "V", "V", line, input, railCurves(line, input), railLimits());
    }

    private double percent(OperatingPoint point) {
        return load(point).orElse(0);
    }

    private Optional<Chart> drawn(
            String title,
            String unit,
            String acrossUnit,
            List<OperatingPoint> over,
            ToDoubleFunction<OperatingPoint> across,
            List<Curve> curves,
            List<LimitLine> limits) {
        long places = over.stream().mapToDouble(across).distinct().count();
        return places < 2 || curves.isEmpty()
                ? Optional.empty()
                : Optional.of(new Chart(title, unit, acrossUnit, curves, near(limits, curves)));
    }

    /** Limits so far away that they would press the lines flat are left out. */
    private static List<LimitLine> near(List<LimitLine> limits, List<Curve> curves) {
        var all = curves.stream()
                .flatMapToDouble(curve -> java.util.Arrays.stream(curve.y()))
                .summaryStatistics();
        double span = Math.max(all.getMax() - all.getMin(), 0.05 * Math.abs(all.getMax()));
        return limits.stream()
                .filter(limit -> limit.at() > all.getMin() - 2 * span && limit.at() < all.getMax() + 2 * span)
                .toList();
    }

    private List<Curve> railCurves(List<OperatingPoint> over, ToDoubleFunction<OperatingPoint> across) {
        List<Curve> measured = new ArrayList<>();
        List<Curve> predicted = new ArrayList<>();
        for (int i = 0; i < points.rails().size(); i++) {
            String rail = points.rails().get(i);
            OptionalInt index = OptionalInt.of(i);
            List<OperatingPoint> with =
                    over.stream().filter(point -> point.rail(rail).isPresent()).toList();
            if (!with.isEmpty()) {
                measured.add(curve(
                        rail + " rail",
                        with,
                        across,
                        point -> point.rail(rail).orElseThrow().voltage().abs(),
                        index));
            }
            predictedRail(with, across, rail, index)
                    .filter(curve -> predicted.stream().noneMatch(curve::liesOn))
                    .ifPresent(predicted::add);
        }
        measured.addAll(predicted);
        return measured;
    }

    private static Curve curve(
            String name,
            List<OperatingPoint> over,
            ToDoubleFunction<OperatingPoint> across,
            Function<OperatingPoint, Estimate> value,
            OptionalInt rail) {
        List<Estimate> values = over.stream().map(value).toList();
        return Curve.measured(
                name,
                over.stream().mapToDouble(across).toArray(),
                values.stream().mapToDouble(Estimate::value).toArray(),
                values.stream().mapToDouble(SessionCharts::expanded).toArray(),
                rail);
    }

    private static double expanded(Estimate value) {
        return value.known() && value.u() > 0 ? value.coverage(0.95).expanded() : 0;
    }

    private Optional<Curve> predictedRail(
            List<OperatingPoint> over, ToDoubleFunction<OperatingPoint> across, String rail, OptionalInt index) {
        return predicted(
                over,
                across,
                "predicted",
                index,
                predicted -> predicted.rail(rail).stream().map(Math::abs).findFirst(),
                1);
    }

    private Optional<Curve> predicted(
            List<OperatingPoint> over, Function<Prediction, OptionalDouble> value, double scale) {
        return predicted(over, this::percent, "predicted", OptionalInt.empty(), value, scale);
    }

    /** The design's line from the first measured point to the last, input and loads between two points in proportion. */
    private Optional<Curve> predicted(
            List<OperatingPoint> over,
            ToDoubleFunction<OperatingPoint> across,
            String name,
            OptionalInt rail,
            Function<Prediction, OptionalDouble> value,
            double scale) {
        if (design.isEmpty() || design.get().transformer().isEmpty() || over.size() < 2) {
            return Optional.empty();
        }
        double[] xs = over.stream().mapToDouble(across).toArray();
        double[] x = new double[PREDICTED_PLACES];
        double[] y = new double[PREDICTED_PLACES];
        for (int i = 0; i < PREDICTED_PLACES; i++) {
            x[i] = xs[0] + (xs[xs.length - 1] - xs[0]) * i / (PREDICTED_PLACES - 1);
            double place = x[i];
            double volts =
                    between(xs, over, place, point -> point.input().voltage().value());
            Map<String, Double> loads = new LinkedHashMap<>();
            points.rails()
                    .forEach(one -> loads.put(one, Math.max(0, between(xs, over, place, point -> point.rail(one)
                            .map(at -> at.current().value())
                            .orElse(0.0)))));
            if (!(volts > 0)) {
                return Optional.empty();
            }
            OptionalDouble predicted =
                    value.apply(Prediction.of(design.get(), volts, loads).orElseThrow());
            if (predicted.isEmpty()) {
                return Optional.empty(); // the sheet does not give what it hangs on
            }
            y[i] = scale * predicted.getAsDouble();
        }
        return Optional.of(Curve.predicted(name, x, y, rail));
    }

    private static double between(
            double[] xs, List<OperatingPoint> over, double place, ToDoubleFunction<OperatingPoint> value) {
        double[] ys = over.stream().mapToDouble(value).toArray();
        return Curve.predicted("", xs, ys, OptionalInt.empty()).at(place);
    }

    private List<LimitLine> efficiencyLimits() {
        return limits(List.of(FigureName.AVERAGE_EFFICIENCY, FigureName.FULL_LOAD_EFFICIENCY), 100, "%");
    }

    private List<LimitLine> railLimits() {
        return limits(List.of(FigureName.RAIL_VOLTAGE, FigureName.HIGHEST_RAIL_VOLTAGE), 1, "V");
    }

    private List<LimitLine> limits(List<FigureName> figures, double factor, String unit) {
        List<LimitLine> lines = new ArrayList<>();
        for (SheetRequirement asked : design.map(Design::requirements).orElse(List.of())) {
            if (figures.contains(asked.figure())) {
                asked.atLeast().ifPresent(least -> lines.add(line("lowest allowed", least * factor, unit, true)));
                asked.atMost().ifPresent(most -> lines.add(line("highest allowed", most * factor, unit, false)));
            }
        }
        return lines.stream().distinct().toList();
    }

    private static LimitLine line(String words, double at, String unit, boolean lower) {
        double magnitude = Math.abs(at);
        return new LimitLine(
                words + " "
                        + new java.math.BigDecimal(magnitude, new java.math.MathContext(6))
                                .stripTrailingZeros()
                                .toPlainString()
                        + " " + unit,
                magnitude,
                lower);
    }
}
