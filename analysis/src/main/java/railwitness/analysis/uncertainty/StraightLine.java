package railwitness.analysis.uncertainty;

import java.util.List;

/** A straight line through points that carry their own uncertainty; see {@link LeastSquares}. */
public final class StraightLine {
    private final LeastSquares fit;
    private final boolean throughOrigin;

    /**
     * A point of a fit.
     *
     * @param x abscissa
     * @param y ordinate
     */
    public record Point(Estimate x, Estimate y) {
        /** A point of bare numbers. */
        public static Point of(double x, double y) {
            return new Point(Estimate.exact(x), Estimate.exact(y));
        }
    }

    private StraightLine(LeastSquares fit, boolean throughOrigin) {
        this.fit = fit;
        this.throughOrigin = throughOrigin;
    }

    /** y = intercept + slope x; at least two points, not all at one x. */
    public static StraightLine fit(List<Point> points) {
        List<List<Estimate>> design =
                points.stream().map(p -> List.of(Estimate.exact(1), p.x())).toList();
        return new StraightLine(new LeastSquares("line", design, ordinates(points)), false);
    }

    /** y = slope x; at least one point, not at x = 0. */
    public static StraightLine throughOrigin(List<Point> points) {
        List<List<Estimate>> design = points.stream().map(p -> List.of(p.x())).toList();
        return new StraightLine(new LeastSquares("line", design, ordinates(points)), true);
    }

    private static List<Estimate> ordinates(List<Point> points) {
        return points.stream().map(Point::y).toList();
    }

    public Estimate slope() {
        return fit.parameters().get(throughOrigin ? 0 : 1);
    }

    /** Zero, exactly, for a line through the origin. */
    public Estimate intercept() {
        return throughOrigin ? Estimate.exact(0) : fit.parameters().get(0);
    }

    /** The line's height at x, with the uncertainty of the line alone. */
    public Estimate at(double x) {
        return throughOrigin ? fit.at(x) : fit.at(1, x);
    }

    /** Standard deviation of a single future point at x about the line found here (Natrella 5-4.2). */
    public double uOfFuturePoint(double x) {
        return Math.hypot(at(x).u(), fit.residualStandardDeviation());
    }

    /** The fit behind the line: residuals, degrees of freedom, condition number. */
    public LeastSquares leastSquares() {
        return fit;
    }
}
