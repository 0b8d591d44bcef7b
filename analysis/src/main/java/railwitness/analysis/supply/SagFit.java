package railwitness.analysis.supply;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/**
 * The straight part of a rail's sag over load.
 *
 * @param resistance fall per ampere, ohm
 * @param at range and how it was found
 */
record SagFit(Estimate resistance, String at) {
    /** A line holds where no point lies further from it than this share of the fall over the range. */
    private static final double STRAIGHT = 0.01;

    /** A fit, or why there is none. */
    record Outcome(Optional<SagFit> fit, String reason) {}

    static Outcome asWired(Points points, String rail) {
        return fit(points, rail, point -> point.rails().get(rail).voltage().abs(), "as wired");
    }

    static Outcome held(Points points, String rail) {
        List<OperatingPoint> loaded = points.loaded();
        if (loaded.size() < 2) {
            return tooFew();
        }
        Optional<Holding> holding = Holding.of(points, rail, loaded);
        if (holding.isEmpty()) {
            return new Outcome(Optional.empty(), Holding.MISSING);
        }
        return fit(
                points,
                rail,
                point -> holding.get().moved(point, rail),
                holding.get().how());
    }

    private static Outcome tooFew() {
        return new Outcome(Optional.empty(), "fewer than two loads with all rails loaded alike");
    }

    private static Outcome fit(Points points, String rail, Function<OperatingPoint, Estimate> volts, String how) {
        List<OperatingPoint> range = new ArrayList<>(points.loaded());
        range.sort(Comparator.comparingDouble(
                point -> point.rails().get(rail).current().value()));
        while (levels(points, range) >= 2) {
            Regression line = regression(points, range, rail, volts);
            Estimate resistance = line.coefficients().get(1).negate();
            double fall = Math.abs(resistance.value()) * span(range, rail);
            if (line.largestResidual() <= Math.max(STRAIGHT * fall, 2 * uncertainty(range, volts))
                    || levels(points, range) == 2) {
                Estimate whole = withLackOfFit(resistance, line, range, rail, volts);
                return new Outcome(
                        Optional.of(new SagFit(whole, range(points, range) + ", line by least squares, " + how)), "");
            }
            dropLowest(points, range);
        }
        return tooFew();
    }

    /**
     * Points that lie further from the line than the fall is uncertain say that the line is not the whole truth, and that
     * other loads of the same range would have given another slope. What the residuals' standard deviation does to a slope
     * (simple linear regression, any textbook) counts twice: for the loads that were taken and for those that were not;
     * what the meters' uncertainty accounts for already is taken off once, so that worse meters never give a smaller U.
     */
    private static Estimate withLackOfFit(
            Estimate resistance,
            Regression line,
            List<OperatingPoint> range,
            String rail,
            Function<OperatingPoint, Estimate> volts) {
        int free = range.size() - line.coefficients().size();
        if (free < 1) {
            return resistance;
        }
        double squares = 0;
        for (double residual : line.residuals()) {
            squares += residual * residual;
        }
        double noise = uncertainty(range, volts);
        double excess = 2 * squares / free - noise * noise / 2;
        if (excess <= 0) {
            return resistance;
        }
        double[] amperes = range.stream()
                .mapToDouble(point -> point.rails().get(rail).current().value())
                .toArray();
        double mean = java.util.Arrays.stream(amperes).average().orElseThrow();
        double spread = 0;
        for (double ampere : amperes) {
            spread += (ampere - mean) * (ampere - mean);
        }
        double u = Math.sqrt(excess / spread);
        return resistance.with(
                Influence.normal("points that lie off the line", u, "ohm").times(1));
    }

    /** Uncertainty of the fall itself: what lies within it is no sign of a bend, V. */
    private static double uncertainty(List<OperatingPoint> range, Function<OperatingPoint, Estimate> volts) {
        Estimate first = volts.apply(range.get(0));
        Estimate last = volts.apply(range.get(range.size() - 1));
        return last.minus(first).u();
    }

    /** With a repeated step a column of time takes heating out of the slope. */
    private static Regression regression(
            Points points, List<OperatingPoint> range, String rail, Function<OperatingPoint, Estimate> volts) {
        List<List<Estimate>> columns = new ArrayList<>();
        columns.add(Regression.ones(range.size()));
        columns.add(LineFit.currents(range, rail));
        if (heatingSeen(points, range)) {
            columns.add(times(range));
            if (!Regression.possible(columns)) {
                columns.remove(2);
            }
        }
        return Regression.weighted(columns, range.stream().map(volts).toList());
    }

    private static boolean heatingSeen(Points points, List<OperatingPoint> range) {
        return levels(points, range) >= 3 && levels(points, range) < range.size();
    }

    private static List<Estimate> times(List<OperatingPoint> range) {
        var times = range.stream().mapToDouble(SagFit::middle).summaryStatistics();
        double span = Math.max(1e-9, times.getMax() - times.getMin());
        return range.stream()
                .map(point -> Estimate.exact((middle(point) - times.getMin()) / span))
                .toList();
    }

    private static double middle(OperatingPoint point) {
        return (point.fromSeconds() + point.toSeconds()) / 2;
    }

    private static long levels(Points points, List<OperatingPoint> range) {
        return range.stream().map(point -> level(points, point)).distinct().count();
    }

    /** Steps closer than the width of a step are one level. */
    private static long level(Points points, OperatingPoint point) {
        return Math.round(points.fraction(point).orElse(0) / (2 * Points.STEP_WIDTH));
    }

    private static void dropLowest(Points points, List<OperatingPoint> range) {
        long lowest = level(points, range.get(0));
        range.removeIf(point -> level(points, point) == lowest);
    }

    private static double span(List<OperatingPoint> range, String rail) {
        return range.get(range.size() - 1).rails().get(rail).current().value()
                - range.get(0).rails().get(rail).current().value();
    }

    private static String range(Points points, List<OperatingPoint> range) {
        return String.format(
                Locale.ROOT,
                "%.0f to %.0f %% of full load, %d points",
                100 * points.fraction(range.get(0)).orElse(0),
                100 * points.fraction(range.get(range.size() - 1)).orElse(0),
                range.size());
    }
}
