package railwitness.analysis.supply;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * What the sag at held input voltage is made of: a part shared by all rails (it grows with the sum of their currents:
 * switches, primary, leads behind the terminals) and each rail's own (with its own current: its rectifiers, its choke or
 * filter, its part of the secondary). Least squares over load and cross-load points, all rails at once.
 *
 * @param sharedOhms ohm
 * @param ownOhms of each rail, ohm
 * @param condition of the fit, 1 is perfect
 * @param warning empty, or that the points hardly tell the parts apart
 */
public record SagSplit(Estimate sharedOhms, Map<String, Estimate> ownOhms, double condition, Optional<String> warning) {

    /** Splits; empty where there are no unequal loads, or no way to hold the input voltage. */
    public static Optional<SagSplit> of(Points points) {
        List<OperatingPoint> used = LossSplit.loadAndCross(points).stream()
                .filter(point -> !points.idle(point))
                .toList();
        List<String> rails = points.rails();
        if (rails.size() < 2 || used.isEmpty()) {
            return Optional.empty();
        }
        List<List<Estimate>> columns = new ArrayList<>();
        for (int column = 0; column < 2 * rails.size() + 1; column++) {
            columns.add(new ArrayList<>());
        }
        List<Estimate> volts = new ArrayList<>();
        for (int rail = 0; rail < rails.size(); rail++) {
            Optional<Holding> holding = Holding.of(points, rails.get(rail), used);
            if (holding.isEmpty()) {
                return Optional.empty();
            }
            for (OperatingPoint point : used) {
                volts.add(holding.get().moved(point, rails.get(rail)));
                enterRow(columns, rails, rail, point);
            }
        }
        return Regression.possible(columns) ? Optional.of(split(columns, volts, rails)) : Optional.empty();
    }

    /** Whether no part lies below zero by more than its uncertainty, as no resistance can. */
    public boolean physical() {
        return LossSplit.physical(sharedOhms) && ownOhms.values().stream().allMatch(LossSplit::physical);
    }

    /** Columns: one intercept per rail, the sum of currents, one own current per rail. */
    private static void enterRow(List<List<Estimate>> columns, List<String> rails, int rail, OperatingPoint point) {
        int count = rails.size();
        for (int other = 0; other < count; other++) {
            columns.get(other).add(Estimate.exact(other == rail ? 1 : 0));
            columns.get(count + 1 + other)
                    .add(other == rail ? point.rails().get(rails.get(rail)).current() : Estimate.exact(0));
        }
        columns.get(count).add(LossSplit.sumOfCurrents(point));
    }

    private static SagSplit split(List<List<Estimate>> columns, List<Estimate> volts, List<String> rails) {
        Regression fit = Regression.of(columns, volts);
        Map<String, Estimate> own = new LinkedHashMap<>();
        for (int rail = 0; rail < rails.size(); rail++) {
            own.put(
                    rails.get(rail),
                    fit.coefficients().get(rails.size() + 1 + rail).negate());
        }
        return new SagSplit(
                fit.coefficients().get(rails.size()).negate(), own, fit.condition(), LossSplit.warning(fit));
    }
}
