package railwitness.logger.recording.record;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.RailBounds;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.plan.PowerUp;

/**
 * The bounds of a run, worked out from the design sheet where it does not state them.
 *
 * @param highestInputVolts highest setting of the plan, V
 * @param overVoltageVolts protection of the supply, V
 * @param workingAmps current limit of the supply once the rails are up, A
 * @param overCurrentAmps protection of the supply, A
 * @param inputAmps input current beyond which the output goes off, A
 * @param rails bounds of each rail by its name
 */
public record RunLimits(
        double highestInputVolts,
        double overVoltageVolts,
        double workingAmps,
        double overCurrentAmps,
        double inputAmps,
        Map<String, RailBounds> rails) {
    /** Margins over what is stated, where the sheet has no limit of its own (common practice, no source). */
    private static final double OVER_VOLTAGE = 1.08;

    private static final double OVER_CURRENT = 1.1;
    private static final double OVER_FULL_LOAD = 1.25;

    /** Efficiency at which a unit of unknown turns is taken to need its full-load current (common practice, no source). */
    private static final double POOR_EFFICIENCY = 0.8;

    /** Where no sheet says a word about currents, A; such sheets are refused before power. */
    private static final double LEAST_AMPS = 1;

    public RunLimits {
        rails = Map.copyOf(rails);
    }

    /** @param supplyAmps highest current of the supply, where the bench sheet states it */
    public static RunLimits of(Design design, Plan plan, OptionalDouble supplyAmps) {
        double highest = plan.highestInputVolts(RunSetup.ratingOf(design));
        double wanted = wantedAmps(design, plan, supplyAmps);
        double working = Math.min(wanted, supplyAmps.orElse(wanted));
        Map<String, RailBounds> rails = new LinkedHashMap<>();
        for (Rail rail : design.rails()) {
            rails.put(rail.name(), RailBounds.of(design, rail, RailBounds.highestInput(design, highest)));
        }
        return new RunLimits(
                highest,
                highest * OVER_VOLTAGE,
                working,
                working * OVER_CURRENT,
                design.limits().inputAmperes().orElse(working * OVER_CURRENT),
                rails);
    }

    double railHighVolts(String rail) {
        return rails.get(rail).highVolts();
    }

    OptionalDouble railLowVolts(String rail) {
        return rails.get(rail).lowVolts();
    }

    /**
     * What the design needs, else the first of these that is stated: the limit of the input current, the fuse, the limit
     * of power-up, what the supply gives.
     */
    private static double wantedAmps(Design design, Plan plan, OptionalDouble supplyAmps) {
        OptionalDouble powerUp = plan.powerUp().map(PowerUp::currentLimitAmps).stream()
                .mapToDouble(Double::doubleValue)
                .findFirst();
        OptionalDouble full = fullLoadAmps(design);
        OptionalDouble needed = full.isPresent()
                ? OptionalDouble.of(Math.max(full.getAsDouble() * OVER_FULL_LOAD, powerUp.orElse(0)))
                : full;
        return Stream.of(
                        design.input().highestAmperes(),
                        needed,
                        design.limits().inputAmperes(),
                        design.input().fuseAmperes(),
                        powerUp,
                        supplyAmps)
                .filter(OptionalDouble::isPresent)
                .findFirst()
                .map(OptionalDouble::getAsDouble)
                .orElse(LEAST_AMPS);
    }

    /** Input current with every rail at its full load, A; empty where the sheet states none. */
    private static OptionalDouble fullLoadAmps(Design design) {
        Map<String, Double> amps = new LinkedHashMap<>();
        double watts = 0;
        for (Rail rail : design.rails()) {
            amps.put(rail.name(), rail.fullLoadAmperes().orElse(0));
            watts += rail.nominalMagnitude() * rail.fullLoadAmperes().orElse(0);
        }
        if (watts == 0) {
            return OptionalDouble.empty();
        }
        Optional<Prediction> predicted = Prediction.of(design, design.input().nominalVolts(), amps);
        return OptionalDouble.of(predicted
                .map(Prediction::inputAmperes)
                .orElse(watts / design.input().nominalVolts() / POOR_EFFICIENCY));
    }
}
