package railwitness.analysis.uncertainty;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Distribution of a sum of independent symmetric contributions, by deterministic quadrature on a grid.
 *
 * <p>Normal parts are one normal. Each Student part is folded in by itself, as JCGM 101, 6.4.9 means it: a scaled t of
 * few degrees of freedom has tails that no merged distribution keeps, and merging them let U fall when an influence
 * was added. Each rectangle is an exact moving average of the cumulative distribution, a triangle two of them, a U
 * shape the mean over Chebyshev's nodes. The half-width is right to about 1e-3 of itself.
 */
final class Convolution {
    private static final int STEPS = 2048;
    private static final int NODES = 48;
    private static final double TAIL = 0.9998;
    private static final double TAIL_OF_FEW = 0.998;
    private static final double FEW = 5;
    private static final double MANY = 200;
    private static final double SMALL = 0.02;

    private final double end;
    private final double step;
    private double[] cumulative;

    Convolution(List<Contribution> parts) {
        List<Contribution> felt = parts.stream().filter(part -> part.u() > 0).toList();
        double whole = Contributions.u(felt);
        List<Contribution> students =
                felt.stream().filter(part -> isStudent(part, whole)).toList();
        List<Contribution> normals = felt.stream()
                .filter(part -> !part.shape().bounded() && !students.contains(part))
                .toList();
        List<Contribution> bounded = new ArrayList<>(
                felt.stream().filter(part -> part.shape().bounded()).toList());
        bounded.sort(Comparator.comparing((Contribution p) -> p.shape() != Shape.RECTANGULAR)
                .thenComparing(Comparator.comparingDouble(Contribution::u).reversed()));
        double scale = Contributions.u(normals);
        double sum = bounded.stream().mapToDouble(Convolution::halfWidth).sum()
                + students.stream().mapToDouble(Convolution::reach).sum();
        double reach = scale * new NormalDistribution().inverseCumulativeProbability(TAIL);
        boolean smooth = scale > 2 * (sum + reach) / STEPS;
        end = smooth ? sum + reach : sum;
        step = 2 * end / STEPS;
        List<Contribution> further = new ArrayList<>(students);
        cumulative = smooth ? sampled(normal(scale)) : sampled(start(bounded, further));
        further.forEach(this::student);
        bounded.forEach(this::add);
    }

    /** A Student part of so many degrees of freedom, or so small, that a normal of its variance says the same is none. */
    private static boolean isStudent(Contribution part, double whole) {
        return !part.shape().bounded() && part.degreesOfFreedom() < MANY && part.u() > SMALL * whole;
    }

    /** Half the span kept of a Student part; what lies beyond is below 0.2 % even for one degree of freedom. */
    private static double reach(Contribution part) {
        double probability = part.degreesOfFreedom() < FEW ? TAIL_OF_FEW : TAIL;
        return part.u() * new TDistribution(part.degreesOfFreedom()).inverseCumulativeProbability(probability);
    }

    private static DoubleUnaryOperator normal(double scale) {
        NormalDistribution normal = new NormalDistribution(0, scale);
        return normal::cumulativeProbability;
    }

    /** Exact start from one part, which is taken from its list: a bounded one, else a Student one. */
    private static DoubleUnaryOperator start(List<Contribution> bounded, List<Contribution> students) {
        if (bounded.isEmpty()) {
            Contribution part = students.remove(0);
            TDistribution t = new TDistribution(part.degreesOfFreedom());
            return x -> t.cumulativeProbability(x / part.u());
        }
        return first(bounded.remove(0), bounded);
    }

    /** F(x) becomes the sum of F(x - t) over the cells of the Student part, each with its probability; half of what lies beyond, below. */
    private void student(Contribution part) {
        TDistribution t = new TDistribution(part.degreesOfFreedom());
        int cells = Math.min(STEPS, (int) Math.ceil(reach(part) / step));
        double[] weight = new double[cells + 1];
        double edge = 0.5;
        double all = 0;
        for (int j = 0; j <= cells; j++) {
            double next = t.cumulativeProbability((j + 0.5) * step / part.u());
            weight[j] = j == 0 ? 2 * (next - edge) : next - edge;
            all += j == 0 ? weight[j] : 2 * weight[j];
            edge = next;
        }
        double beyond = (1 - all) / 2;
        double[] before = cumulative;
        double[] after = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            double sum = weight[0] * before[i];
            for (int j = 1; j <= cells; j++) {
                sum += weight[j] * (before[Math.max(0, i - j)] + before[Math.min(STEPS, i + j)]);
            }
            after[i] = sum + beyond;
        }
        cumulative = after;
    }

    private static double halfWidth(Contribution part) {
        return part.u() * part.shape().divisor();
    }

    /** Exact start from a bounded part; what a triangle leaves to do is put back into the rest. */
    private static DoubleUnaryOperator first(Contribution part, List<Contribution> rest) {
        double a = halfWidth(part);
        if (part.shape() == Shape.U_SHAPED) {
            return x -> x <= -a ? 0 : x >= a ? 1 : 0.5 + Math.asin(x / a) / Math.PI;
        }
        if (part.shape() == Shape.TRIANGULAR) {
            rest.add(new Contribution(part.name(), Shape.RECTANGULAR, a / 2 / Math.sqrt(3), part.degreesOfFreedom()));
            return ramp(a / 2);
        }
        return ramp(a);
    }

    private static DoubleUnaryOperator ramp(double a) {
        return x -> Math.max(0, Math.min(1, (x + a) / (2 * a)));
    }

    private double[] sampled(DoubleUnaryOperator function) {
        double[] values = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            values[i] = function.applyAsDouble(-end + i * step);
        }
        return values;
    }

    private void add(Contribution part) {
        double a = halfWidth(part);
        switch (part.shape()) {
            case RECTANGULAR -> rectangle(a);
            case TRIANGULAR -> {
                rectangle(a / 2);
                rectangle(a / 2);
            }
            default -> uShape(a);
        }
    }

    /** G(x) = (1 / 2a) integral of F from x - a to x + a. */
    private void rectangle(double a) {
        if (a < step / 64) {
            return;
        }
        double[] area = new double[STEPS + 1];
        for (int i = 1; i <= STEPS; i++) {
            area[i] = area[i - 1] + step * (cumulative[i - 1] + cumulative[i]) / 2;
        }
        double[] before = cumulative;
        cumulative = sampled(x -> (area(area, before, x + a) - area(area, before, x - a)) / (2 * a));
    }

    private double area(double[] area, double[] f, double x) {
        double place = (x + end) / step;
        if (place <= 0) {
            return 0;
        }
        if (place >= STEPS) {
            return area[STEPS] + (x - end);
        }
        int i = (int) place;
        double part = place - i;
        return area[i] + step * part * (f[i] + part * (f[i + 1] - f[i]) / 2);
    }

    private void uShape(double a) {
        double[] before = cumulative;
        cumulative = sampled(x -> {
            double sum = 0;
            for (int j = 0; j < NODES; j++) {
                sum += at(before, x - a * Math.cos(Math.PI * (j + 0.5) / NODES));
            }
            return sum / NODES;
        });
    }

    private double at(double[] f, double x) {
        double place = (x + end) / step;
        if (place <= 0) {
            return 0;
        }
        if (place >= STEPS) {
            return 1;
        }
        int i = (int) place;
        return f[i] + (place - i) * (f[i + 1] - f[i]);
    }

    /** P(sum <= x). */
    double below(double x) {
        return at(cumulative, x);
    }

    /** Half-width q with P(|sum| <= q) = probability. */
    double halfWidth(double probability) {
        double wanted = (1 + probability) / 2;
        int i = STEPS / 2;
        while (i < STEPS && cumulative[i] < wanted) {
            i++;
        }
        double rise = cumulative[i] - cumulative[i - 1];
        double part = rise == 0 ? 0 : (wanted - cumulative[i - 1]) / rise;
        return -end + (i - 1 + Math.max(0, Math.min(1, part))) * step;
    }
}
