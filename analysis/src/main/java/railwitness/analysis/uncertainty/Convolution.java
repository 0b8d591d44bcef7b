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
 * <p>The normal and Student parts are taken together as one scaled t of their Welch-Satterthwaite degrees of
 * freedom (Simpson's rule on its density); each rectangle is an exact moving average of the cumulative distribution, a
 * triangle two of them, a U shape the mean over Chebyshev's nodes. The half-width is right to about 1e-4 of itself
 * where the bounded parts dominate.
 */
final class Convolution {
    private static final int STEPS = 2048;
    private static final int NODES = 48;
    private static final double TAIL = 0.9998;
    private static final double TAIL_OF_FEW = 0.998;
    private static final double FEW = 5;
    private static final double CERTAIN = 1e6;

    private final double end;
    private final double step;
    private double[] cumulative;

    Convolution(List<Contribution> parts) {
        List<Contribution> smooth =
                parts.stream().filter(p -> !p.shape().bounded() && p.u() > 0).toList();
        List<Contribution> bounded = new ArrayList<>(
                parts.stream().filter(p -> p.shape().bounded() && p.u() > 0).toList());
        bounded.sort(Comparator.comparing((Contribution p) -> p.shape() != Shape.RECTANGULAR)
                .thenComparing(Comparator.comparingDouble(Contribution::u).reversed()));
        double sum = bounded.stream().mapToDouble(Convolution::halfWidth).sum();
        double scale = Contributions.u(smooth);
        double dof = Contributions.effectiveDegreesOfFreedom(smooth);
        double reach = smooth.isEmpty() ? 0 : scale * tail(dof);
        boolean felt = scale > 2 * (sum + reach) / STEPS;
        end = felt ? sum + reach : sum;
        step = 2 * end / STEPS;
        cumulative = felt ? integrated(scale, dof) : sampled(first(bounded.remove(0), bounded));
        bounded.forEach(this::add);
    }

    private static double tail(double dof) {
        double probability = dof < FEW ? TAIL_OF_FEW : TAIL;
        return dof > CERTAIN
                ? new NormalDistribution().inverseCumulativeProbability(probability)
                : new TDistribution(dof).inverseCumulativeProbability(probability);
    }

    /** Cumulative distribution of a scaled t (normal for many degrees of freedom), outwards from one half. */
    private double[] integrated(double scale, double dof) {
        DoubleUnaryOperator density = density(scale, dof);
        double[] values = new double[STEPS + 1];
        int middle = STEPS / 2;
        values[middle] = 0.5;
        double left = density.applyAsDouble(0);
        for (int i = 1; i <= middle; i++) {
            double right = density.applyAsDouble(i * step);
            double area = step / 6 * (left + 4 * density.applyAsDouble((i - 0.5) * step) + right);
            values[middle + i] = Math.min(1, values[middle + i - 1] + area);
            values[middle - i] = 1 - values[middle + i];
            left = right;
        }
        return values;
    }

    private static DoubleUnaryOperator density(double scale, double dof) {
        if (dof > CERTAIN) {
            double height = 1 / (scale * Math.sqrt(2 * Math.PI));
            return x -> height * Math.exp(-x * x / (2 * scale * scale));
        }
        double height = new TDistribution(dof).density(0) / scale;
        return x -> height * Math.pow(1 + x * x / (scale * scale * dof), -(dof + 1) / 2);
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
