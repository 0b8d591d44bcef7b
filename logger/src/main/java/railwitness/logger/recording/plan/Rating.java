package railwitness.logger.recording.plan;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a plan must know of the unit to become steps.
 *
 * @param nominalInputVolts V
 * @param fullLoadAmps full load of each rail in the order of the design sheet, A
 */
public record Rating(double nominalInputVolts, Map<String, Double> fullLoadAmps) {
    public Rating {
        fullLoadAmps = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(fullLoadAmps));
    }

    /** Every rail at this share of its full load, in percent. */
    Map<String, Double> atPercent(double percent) {
        Map<String, Double> amps = new LinkedHashMap<>();
        fullLoadAmps.forEach((rail, full) -> amps.put(rail, full * percent / 100));
        return amps;
    }

    /** One rail at one share, all others at another, in percent. */
    Map<String, Double> atPercent(String rail, double own, double others) {
        Map<String, Double> amps = new LinkedHashMap<>();
        fullLoadAmps.forEach((name, full) -> amps.put(name, full * (name.equals(rail) ? own : others) / 100));
        return amps;
    }
}
