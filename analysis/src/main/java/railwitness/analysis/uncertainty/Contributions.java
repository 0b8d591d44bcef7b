package railwitness.analysis.uncertainty;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Gathers terms into the lines of a budget. */
final class Contributions {
    private Contributions() {}

    /** One line per influence or ensemble, largest first, those of equal size in order of name. */
    static List<Contribution> of(List<Term> terms) {
        return groups(terms).stream()
                .map(Contributions::together)
                .sorted(Comparator.comparingDouble(Contribution::u).reversed().thenComparing(Contribution::name))
                .toList();
    }

    /** The terms of each influence or ensemble together. */
    static List<List<Term>> groups(List<Term> terms) {
        Map<Object, List<Term>> groups = new LinkedHashMap<>();
        terms.forEach(term -> groups.computeIfAbsent(term.influence().group(), key -> new ArrayList<>())
                .add(term));
        return List.copyOf(groups.values());
    }

    static Contribution together(List<Term> group) {
        Influence first = group.get(0).influence();
        double u = 0;
        for (Term term : group) {
            u = Math.hypot(u, term.coefficient());
        }
        return new Contribution(first.groupName(), first.shape(), u, first.degreesOfFreedom());
    }

    static double u(List<Contribution> parts) {
        return parts.stream().mapToDouble(Contribution::u).reduce(0, Math::hypot);
    }

    /** nu = u^4 / sum(u_i^4 / nu_i), GUM formula G.2b. */
    static double effectiveDegreesOfFreedom(List<Contribution> parts) {
        double u = u(parts);
        double sum = 0;
        for (Contribution part : parts) {
            if (part.u() > 0) {
                sum += Math.pow(part.u() / u, 4) / part.degreesOfFreedom();
            }
        }
        return sum == 0 ? Double.POSITIVE_INFINITY : 1 / sum;
    }

    /** Excess kurtosis that the bounded shapes give the sum: cumulants add. */
    static double excess(List<Contribution> parts) {
        double u = u(parts);
        return u == 0
                ? 0
                : parts.stream()
                        .mapToDouble(p -> p.shape().excess() * Math.pow(p.u() / u, 4))
                        .sum();
    }
}
