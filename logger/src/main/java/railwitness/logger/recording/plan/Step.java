package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One state of the bench.
 *
 * @param stage the stage's word, such as {@code load-sweep}
 * @param name what the sheet calls it, such as {@code 50 %}; unique within its stage
 * @param inputVolts setting of the supply, V
 * @param loadAmps by rail, A
 * @param remoteOn whether the unit is turned on
 * @param timing settling and averaging
 * @param hold how long the state is kept before it is averaged; zero for all but a hold
 * @param mayGiveUp whether the unit is expected to drop out here
 */
public record Step(
        String stage,
        String name,
        double inputVolts,
        Map<String, Double> loadAmps,
        boolean remoteOn,
        Timing timing,
        Duration hold,
        boolean mayGiveUp) {
    public Step {
        loadAmps = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(loadAmps));
    }

    Step(String stage, String name, double inputVolts, Map<String, Double> loadAmps, Timing timing) {
        this(stage, name, inputVolts, loadAmps, true, timing, Duration.ZERO, false);
    }
}
