package railwitness.analysis.contradiction;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;

/**
 * All that was read at one step, and what was asked for.
 *
 * @param point worked out from it
 * @param means by channel, such as {@code supply.current}; each with the sign it was read with
 * @param setAmps current of each programmable load, A; a rail that is not named has none or it is not known
 * @param resistorAmps what the resistor switched to a rail must draw at the rail's voltage, A
 */
public record Testimony(
        OperatingPoint point,
        Map<String, Mean> means,
        Map<String, Double> setAmps,
        Map<String, Estimate> resistorAmps) {
    public Testimony {
        means = Collections.unmodifiableMap(new LinkedHashMap<>(means));
        setAmps = Collections.unmodifiableMap(new LinkedHashMap<>(setAmps));
        resistorAmps = Collections.unmodifiableMap(new LinkedHashMap<>(resistorAmps));
    }

    /** A point of which nothing more is known. */
    public static Testimony of(OperatingPoint point) {
        Map<String, Mean> means = new LinkedHashMap<>();
        means.put("input.voltage", new Mean(point.input().voltage(), false));
        means.put("input.current", new Mean(point.input().current(), false));
        point.rails().forEach((rail, at) -> {
            means.put(rail + ".voltage", new Mean(at.voltage(), false));
            means.put(rail + ".current", new Mean(at.current(), false));
        });
        return new Testimony(point, means, Map.of(), Map.of());
    }

    Optional<Estimate> mean(String channel) {
        return Optional.ofNullable(means.get(channel)).map(Mean::value);
    }

    OptionalDouble value(String channel) {
        Mean mean = means.get(channel);
        return mean == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(mean.value().value());
    }

    boolean still(String channel) {
        return means.containsKey(channel) && means.get(channel).still();
    }

    String where() {
        return point.step().equals(point.stage()) ? point.stage() : point.stage() + " " + point.step();
    }
}
