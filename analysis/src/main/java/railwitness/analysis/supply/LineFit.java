package railwitness.analysis.supply;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * How a rail follows the input terminals' voltage.
 *
 * @param slope of the rail's magnitude, V/V
 * @param points that gave it, lowest input first
 * @param at range and load in words
 */
record LineFit(Estimate slope, List<OperatingPoint> points, String at) {
    /** Inputs closer than this to each other, relative, make no line. */
    private static final double LEAST_SPAN = 0.02;

    private static final double SAME_LOAD = 0.02;

    /** From the line sweep, of a regulated rail where it holds; empty where that has not two inputs apart, the rails up. */
    static Optional<LineFit> of(Points points, String rail) {
        List<OperatingPoint> line = sweep(points).stream()
                .filter(point -> !points.outOfRegulation(point, rail))
                .toList();
        List<OperatingPoint> alike = sameLoad(line, rail);
        if (alike.size() > line.size() / 2 && spans(alike)) {
            return Optional.of(alone(alike, rail));
        }
        return spans(line) ? together(points, line, rail) : Optional.empty();
    }

    static List<OperatingPoint> sweep(Points points) {
        return points.stage("line-sweep").stream()
                .filter(points::up)
                .sorted(Comparator.comparingDouble(
                        point -> point.input().voltage().value()))
                .toList();
    }

    /** Fits a straight line through points of the same load. */
    static LineFit alone(List<OperatingPoint> line, String rail) {
        Regression fit = Regression.weighted(List.of(Regression.ones(line.size()), inputs(line)), volts(line, rail));
        return new LineFit(fit.coefficients().get(1), line, range(line) + ", " + load(line, rail));
    }

    /** Loads that change with the rail, such as resistors: the load sweep tells what part the load has. */
    private static Optional<LineFit> together(Points points, List<OperatingPoint> line, String rail) {
        List<OperatingPoint> both = new ArrayList<>(line);
        both.addAll(points.loaded());
        List<List<Estimate>> columns = List.of(Regression.ones(both.size()), inputs(both), currents(both, rail));
        if (both.size() < 4 || !Regression.possible(columns)) {
            return Optional.empty();
        }
        Regression fit = Regression.weighted(columns, volts(both, rail));
        return Optional.of(new LineFit(
                fit.coefficients().get(1),
                line,
                range(line) + ", the load changed with the rail; its part taken out with the load sweep"));
    }

    private static List<OperatingPoint> sameLoad(List<OperatingPoint> line, String rail) {
        if (line.isEmpty()) {
            return line;
        }
        double[] sorted = line.stream()
                .mapToDouble(point -> current(point, rail).value())
                .sorted()
                .toArray();
        double median = sorted[sorted.length / 2];
        return line.stream()
                .filter(point -> Math.abs(current(point, rail).value() - median) <= SAME_LOAD * median + 1e-9)
                .toList();
    }

    private static boolean spans(List<OperatingPoint> line) {
        if (line.size() < 2) {
            return false;
        }
        double low = line.get(0).input().voltage().value();
        double high = line.get(line.size() - 1).input().voltage().value();
        return high - low >= LEAST_SPAN * high;
    }

    static List<Estimate> inputs(List<OperatingPoint> points) {
        return points.stream().map(point -> point.input().voltage()).toList();
    }

    static List<Estimate> volts(List<OperatingPoint> points, String rail) {
        return points.stream()
                .map(point -> point.rails().get(rail).voltage().abs())
                .toList();
    }

    static List<Estimate> currents(List<OperatingPoint> points, String rail) {
        return points.stream().map(point -> current(point, rail)).toList();
    }

    private static Estimate current(OperatingPoint point, String rail) {
        return point.rails().get(rail).current();
    }

    private static String range(List<OperatingPoint> line) {
        return String.format(
                Locale.ROOT,
                "%.2f to %.2f V %s, %d points",
                line.get(0).input().voltage().value(),
                line.get(line.size() - 1).input().voltage().value(),
                line.get(0).inputSource().words(),
                line.size());
    }

    private static String load(List<OperatingPoint> line, String rail) {
        return String.format(Locale.ROOT, "%.3g A", current(line.get(0), rail).value());
    }
}
