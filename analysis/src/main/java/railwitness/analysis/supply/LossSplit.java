package railwitness.analysis.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * Where the loss goes, as the points tell: fixed, in proportion to the sum of the rails' currents, and with its square.
 * Least squares over load and cross-load points. Names of parts belong to the design's budget, not to these terms.
 *
 * @param fixedWatts W
 * @param perAmpere W/A (what a drop such as a diode's takes)
 * @param perAmpereSquared W/A^2 (what a resistance takes)
 * @param condition of the fit, 1 is perfect
 * @param warning empty, or that the points hardly tell the terms apart
 */
public record LossSplit(
        Estimate fixedWatts,
        Estimate perAmpere,
        Estimate perAmpereSquared,
        double condition,
        Optional<String> warning) {

    private static final double COVERAGE = 0.95;

    /** Splits; empty with fewer than three different loads. */
    public static Optional<LossSplit> of(Points points) {
        List<OperatingPoint> used = loadAndCross(points);
        if (used.isEmpty()) {
            return Optional.empty();
        }
        List<Estimate> sums = used.stream().map(LossSplit::sumOfCurrents).toList();
        List<List<Estimate>> columns = new ArrayList<>();
        columns.add(Regression.ones(used.size()));
        columns.add(sums);
        columns.add(sums.stream().map(sum -> sum.times(sum)).toList());
        if (!Regression.possible(columns)) {
            return Optional.empty();
        }
        Regression fit =
                Regression.of(columns, used.stream().map(OperatingPoint::loss).toList());
        return Optional.of(new LossSplit(
                fit.coefficients().get(0),
                fit.coefficients().get(1),
                fit.coefficients().get(2),
                fit.condition(),
                warning(fit)));
    }

    /** The terms at a sum of currents, A: fixed, proportional, square, in W. */
    public List<Estimate> at(double amperes) {
        return List.of(fixedWatts, perAmpere.scale(amperes), perAmpereSquared.scale(amperes * amperes));
    }

    /** Whether no term lies below zero by more than its uncertainty, as no part of a loss can. */
    public boolean physical() {
        return List.of(fixedWatts, perAmpere, perAmpereSquared).stream().allMatch(LossSplit::physical);
    }

    static boolean physical(Estimate part) {
        return part.value() >= 0 || part.value() >= -part.coverage(COVERAGE).expanded();
    }

    static Optional<String> warning(Regression fit) {
        boolean lost = fit.condition() > Regression.ILL_CONDITIONED;
        return lost
                ? Optional.of("the points hardly tell the terms apart: more unequal loads or a wider sweep would")
                : Optional.empty();
    }

    static List<OperatingPoint> loadAndCross(Points points) {
        List<OperatingPoint> used = new ArrayList<>(points.sweep());
        points.stage("cross-load").stream().filter(points::up).forEach(used::add);
        return used;
    }

    static Estimate sumOfCurrents(OperatingPoint point) {
        return Estimate.sum(
                point.rails().values().stream().map(RailPoint::current).toList());
    }
}
