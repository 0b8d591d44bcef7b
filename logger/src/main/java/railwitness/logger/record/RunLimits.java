package railwitness.logger.record;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.Rail;

/**
 * The bounds of a run, worked out from the design sheet where it does not state them.
 *
 * @param highestInputVolts highest setting of the plan, V
 * @param overVoltageVolts protection of the supply, V
 * @param workingAmps current limit of the supply once the rails are up, A
 * @param overCurrentAmps protection of the supply, A
 * @param inputAmps input current beyond which the output goes off, A
 * @param railHighVolts by rail, magnitude, V
 */
record RunLimits(
        double highestInputVolts,
        double overVoltageVolts,
        double workingAmps,
        double overCurrentAmps,
        double inputAmps,
        Map<String, Double> railHigh) {
    /** Margins over what is stated, where the sheet has no limit of its own (common practice, no source). */
    private static final double OVER_VOLTAGE = 1.08;

    private static final double OVER_CURRENT = 1.1;
    private static final double RAIL_HIGH = 1.15;

    /** @param supplyAmps highest current of the supply, where the bench sheet states it */
    static RunLimits of(Design design, double highestInputVolts, OptionalDouble supplyAmps) {
        double wanted = design.input().highestAmperes().orElseGet(() -> fullLoadAmps(design) * 1.25);
        double working = Math.min(wanted, supplyAmps.orElse(wanted));
        Map<String, Double> high = new HashMap<>();
        for (Rail rail : design.rails()) {
            double noLoad = Prediction.highestNoLoadRailVolts(design).orElse(Math.abs(rail.nominalVolts()) * 1.2);
            high.put(rail.name(), design.limits().railHighVolts().orElse(noLoad * RAIL_HIGH));
        }
        return new RunLimits(
                highestInputVolts,
                highestInputVolts * OVER_VOLTAGE,
                working,
                working * OVER_CURRENT,
                design.limits().inputAmperes().orElse(working * OVER_CURRENT),
                high);
    }

    double railHighVolts(String rail) {
        return railHigh.get(rail);
    }

    private static double fullLoadAmps(Design design) {
        Map<String, Double> amps = new HashMap<>();
        double watts = 0;
        for (Rail rail : design.rails()) {
            amps.put(rail.name(), rail.fullLoadAmperes().orElse(1));
            watts += Math.abs(rail.nominalVolts()) * rail.fullLoadAmperes().orElse(1);
        }
        double guess = watts / design.input().nominalVolts() / 0.8;
        return Prediction.of(design, design.input().nominalVolts(), amps)
                .map(Prediction::inputAmperes)
                .orElse(guess);
    }
}
