package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One part of a cycle that a hold repeats.
 *
 * @param length how long it lasts, above zero
 * @param inputVolts setting of the supply, V
 * @param loadAmps by rail, A
 * @param off the supply's output is off meanwhile
 */
public record CyclePart(Duration length, double inputVolts, Map<String, Double> loadAmps, boolean off) {
    public CyclePart {
        loadAmps = Collections.unmodifiableMap(new LinkedHashMap<>(loadAmps));
    }
}
