package railwitness.analysis.uncertainty;

import java.util.List;
import java.util.Locale;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Chooses the coverage factor.
 *
 * <p>Normal or Student by default (GUM G.4.1, G.6.4). The factor of the true convolution is taken where bounded
 * shapes dominate, as EA-4/02 S9 and S10 do: where they make up 95 % of the variance, or give the sum an excess
 * kurtosis of -0.5 or beyond (one rectangle alone has -1.2, two equal ones -0.6). Elsewhere the difference is
 * below 2 % of k, and the Student factor lies on the safe side.
 */
final class CoverageFactor {
    private static final double DOMINATED = -0.5;
    private static final double BOUNDED_SHARE = 0.95;
    private static final double NEGLIGIBLE_SHARE = 1e-9;

    private CoverageFactor() {}

    static Coverage of(List<Contribution> parts, double probability) {
        double u = Contributions.u(parts);
        double dof = Contributions.effectiveDegreesOfFreedom(parts);
        if (u == 0) {
            return new Coverage(normal(probability), 0, dof, probability, "exact");
        }
        if (dominated(parts, u)) {
            double k = new Convolution(parts).halfWidth(probability) / u;
            return new Coverage(k, k * u, dof, probability, name(parts, u));
        }
        double k = student(probability, dof);
        return new Coverage(k, k * u, dof, probability, name(dof));
    }

    /** Probability that the error is at most the deviation. */
    static double below(List<Contribution> parts, double deviation) {
        double u = Contributions.u(parts);
        if (u == 0) {
            return deviation >= 0 ? 1 : 0;
        }
        if (dominated(parts, u)) {
            return new Convolution(parts).below(deviation);
        }
        double whole = truncated(Contributions.effectiveDegreesOfFreedom(parts));
        return whole > 1e6
                ? new NormalDistribution().cumulativeProbability(deviation / u)
                : new TDistribution(whole).cumulativeProbability(deviation / u);
    }

    private static boolean dominated(List<Contribution> parts, double u) {
        List<Contribution> bounded =
                parts.stream().filter(part -> part.shape().bounded()).toList();
        double share = Math.pow(Contributions.u(bounded) / u, 2);
        return share >= BOUNDED_SHARE || Contributions.excess(parts) <= DOMINATED;
    }

    private static double student(double probability, double dof) {
        double whole = truncated(dof);
        return whole > 1e6
                ? normal(probability)
                : new TDistribution(whole).inverseCumulativeProbability((1 + probability) / 2);
    }

    private static double normal(double probability) {
        return new NormalDistribution().inverseCumulativeProbability((1 + probability) / 2);
    }

    /** The next lower whole number (GUM G.4.1), where 18.99 counts as the 19 it is printed as; never below 1. */
    private static double truncated(double dof) {
        return Double.isInfinite(dof) ? dof : Math.max(1, Math.floor(dof + 0.01));
    }

    private static String name(double dof) {
        double whole = truncated(dof);
        return whole > 1e6 ? "normal" : String.format(Locale.ROOT, "Student, %.0f degrees of freedom", whole);
    }

    private static String name(List<Contribution> parts, double u) {
        List<Contribution> felt = parts.stream()
                .filter(part -> part.u() * part.u() > NEGLIGIBLE_SHARE * u * u)
                .toList();
        boolean allRectangular = felt.stream().allMatch(part -> part.shape() == Shape.RECTANGULAR);
        if (felt.size() == 1) {
            return felt.get(0).shape().word();
        }
        return allRectangular && felt.size() == 2 ? "trapezoidal" : "convolution of the contributions";
    }
}
