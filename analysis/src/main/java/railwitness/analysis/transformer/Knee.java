package railwitness.analysis.transformer;

import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Where the idle current leaves its straight course because the core saturates: a change-point fit of two straight lines
 * that meet, the current steeper beyond. The interval holds every knee that the F test does not refuse (D. Hinkley,
 * 'Inference in two-phase regression', JASA 66 (1971), 736 to 743, from memory).
 *
 * <p>Weak where the bend is round: the knee found is then that of the two lines that come nearest.
 *
 * @param volts input voltage at the knee, V
 * @param lowest end of the interval at 95 %, V
 * @param highest end of the interval at 95 %, V
 * @param slopeBefore of the current, A/V
 * @param slopeBeyond of the current, A/V
 */
public record Knee(double volts, double lowest, double highest, double slopeBefore, double slopeBeyond) {
    private static final int LEAST = 7;
    private static final int STEPS = 1500;
    private static final double CERTAIN = 0.9995;

    /**
     * One reading without load.
     *
     * @param volts at the input, V
     * @param amperes drawn, A
     */
    public record Point(double volts, double amperes) {}

    /**
     * Looks for one.
     *
     * @param points at least seven, in any order
     * @return empty where two lines are not clearly better than one (0.1 %), or the steeper is not the later
     * @throws IllegalArgumentException for fewer points
     */
    public static Optional<Knee> find(List<Point> points) {
        if (points.size() < LEAST) {
            throw new IllegalArgumentException(
                    "a knee needs at least " + LEAST + " input voltages without load, not " + points.size());
        }
        return new BrokenLine(points).knee();
    }

    /** The sum of squares that is left over for each place of the knee. */
    private static final class BrokenLine {
        private final double[] x;
        private final double[] y;

        BrokenLine(List<Point> points) {
            List<Point> sorted = points.stream()
                    .sorted(java.util.Comparator.comparingDouble(Point::volts))
                    .toList();
            x = sorted.stream().mapToDouble(Point::volts).toArray();
            y = residual(sorted.stream().mapToDouble(Point::amperes).toArray());
            slope = slope(sorted.stream().mapToDouble(Point::amperes).toArray());
        }

        private final double slope;

        Optional<Knee> knee() {
            int n = x.length;
            double from = x[1];
            double to = x[n - 2];
            double[] left = new double[STEPS + 1];
            int best = 0;
            for (int i = 0; i <= STEPS; i++) {
                left[i] = left(from + (to - from) * i / STEPS);
                best = left[i] < left[best] ? i : best;
            }
            double knee = from + (to - from) * best / STEPS;
            double freedom = n - 4.0;
            double t = new TDistribution(freedom).inverseCumulativeProbability(CERTAIN);
            double whole = dot(y, y);
            if (!(whole - left[best] > t * t * left[best] / freedom) || beyond(knee) <= 0) {
                return Optional.empty();
            }
            double t95 = new TDistribution(freedom).inverseCumulativeProbability(0.975);
            double allowed = left[best] * (1 + t95 * t95 / freedom);
            int low = best;
            int high = best;
            for (int i = 0; i <= STEPS; i++) {
                if (left[i] <= allowed) {
                    low = Math.min(low, i);
                    high = Math.max(high, i);
                }
            }
            double[] bend = hinge(knee);
            double before = slope - beyond(knee) * slope(bend);
            return Optional.of(new Knee(
                    knee,
                    from + (to - from) * Math.max(0, low - 1) / STEPS,
                    from + (to - from) * Math.min(STEPS, high + 1) / STEPS,
                    before,
                    before + beyond(knee)));
        }

        private double[] hinge(double knee) {
            double[] bend = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                bend[i] = Math.max(0, x[i] - knee);
            }
            return bend;
        }

        /** What the slope grows by at the knee. */
        private double beyond(double knee) {
            double[] bend = residual(hinge(knee));
            return dot(bend, y) / dot(bend, bend);
        }

        private double left(double knee) {
            double[] bend = residual(hinge(knee));
            double across = dot(bend, y);
            return Math.max(0, dot(y, y) - across * across / dot(bend, bend));
        }

        private double slope(double[] values) {
            double middle = mean(x);
            double height = mean(values);
            double across = 0;
            double along = 0;
            for (int i = 0; i < x.length; i++) {
                across += (x[i] - middle) * (values[i] - height);
                along += (x[i] - middle) * (x[i] - middle);
            }
            return across / along;
        }

        /** What a straight line through the values leaves. */
        private double[] residual(double[] values) {
            double middle = mean(x);
            double height = mean(values);
            double steep = slope(values);
            double[] left = new double[values.length];
            for (int i = 0; i < values.length; i++) {
                left[i] = values[i] - height - steep * (x[i] - middle);
            }
            return left;
        }

        private static double mean(double[] values) {
            return java.util.Arrays.stream(values).average().orElseThrow();
        }

        private static double dot(double[] a, double[] b) {
            double sum = 0;
            for (int i = 0; i < a.length; i++) {
                sum += a[i] * b[i];
            }
            return sum;
        }
    }
}
