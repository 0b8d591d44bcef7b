package railwitness.analysis.supply;

import static railwitness.analysis.design.FigureName.CROSS_EFFECT;
import static railwitness.analysis.design.FigureName.CROSS_EFFECT_AS_WIRED;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/** How one rail feels the other's load. */
final class CrossFigures {
    private final Points points;
    private final Figures.Ledger ledger;

    CrossFigures(Points points, Figures.Ledger ledger) {
        this.points = points;
        this.ledger = ledger;
    }

    void enter() {
        for (String rail : points.rails()) {
            if (points.rails().size() != 2) {
                miss(rail, "needs two rails");
                continue;
            }
            String other = points.rails().get(points.rails().get(0).equals(rail) ? 1 : 0);
            pair(rail, other)
                    .ifPresentOrElse(
                            pair -> enter(rail, other, pair),
                            () -> miss(
                                    rail, "no two points with this rail's load constant and the other's low and full"));
        }
    }

    private void miss(String rail, String reason) {
        ledger.miss(CROSS_EFFECT, Optional.of(rail), reason);
        ledger.miss(CROSS_EFFECT_AS_WIRED, Optional.of(rail), reason);
    }

    private record Pair(OperatingPoint low, OperatingPoint full) {}

    private void enter(String rail, String other, Pair pair) {
        Estimate change = magnitude(pair.full(), rail).minus(magnitude(pair.low(), rail));
        String at = String.format(
                Locale.ROOT,
                "own load %.0f %%, the other's from %.0f to %.0f %%",
                percent(pair.low(), rail),
                percent(pair.low(), other),
                percent(pair.full(), other));
        ledger.enter(CROSS_EFFECT_AS_WIRED, Optional.of(rail), change, at + ", source and leads as wired");
        Holding.of(points, rail, List.of(pair.low(), pair.full()))
                .ifPresentOrElse(
                        held -> ledger.enter(
                                CROSS_EFFECT,
                                Optional.of(rail),
                                held.moved(pair.full(), rail).minus(held.moved(pair.low(), rail)),
                                at + ", " + held.how()),
                        () -> ledger.miss(CROSS_EFFECT, Optional.of(rail), Holding.MISSING));
    }

    /** The pair of the smallest own load; among several low points of the other the lowest. */
    private Optional<Pair> pair(String rail, String other) {
        List<OperatingPoint> candidates = points.all().stream()
                .filter(point ->
                        !List.of("standby", "power-up", "line-sweep", "hold").contains(point.stage()))
                .filter(points::up)
                .filter(point -> share(point, rail) > Points.STEP_WIDTH && share(point, other) > Points.STEP_WIDTH)
                .toList();
        return candidates.stream()
                .filter(point -> share(point, other) >= 1 - Points.STEP_WIDTH)
                .sorted(Comparator.comparingDouble(point -> share(point, rail)))
                .flatMap(full -> candidates.stream()
                        .filter(low -> share(low, other) <= 0.5)
                        .filter(low -> Math.abs(share(low, rail) - share(full, rail)) <= Points.STEP_WIDTH)
                        .min(Comparator.comparingDouble(low -> share(low, other)))
                        .map(low -> new Pair(low, full))
                        .stream())
                .findFirst();
    }

    private double share(OperatingPoint point, String rail) {
        return points.fraction(point, rail).orElse(0);
    }

    private double percent(OperatingPoint point, String rail) {
        return 100 * share(point, rail);
    }

    private static Estimate magnitude(OperatingPoint point, String rail) {
        return point.rails().get(rail).voltage().abs();
    }
}
