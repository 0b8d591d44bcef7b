package railwitness.analysis.expected;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * What the sheet leads to expect at one point.
 *
 * @param values by what: {@code input.current}, {@code plus.voltage} (with its sign), {@code plus.ripple}, {@code loss},
 *     {@code efficiency} and so on; what the sheet cannot bound is missing
 * @param unbounded the rest: of no use by itself, but two of them may share what makes them uncertain
 */
public record Expected(Map<String, Estimate> values, Map<String, Estimate> unbounded) {
    public static final String INPUT_CURRENT = "input.current";
    public static final String LOSS = "loss";
    public static final String EFFICIENCY = "efficiency";

    public Expected {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
        unbounded = Collections.unmodifiableMap(new LinkedHashMap<>(unbounded));
    }

    /** Nothing can be said. */
    public static Expected nothing() {
        return new Expected(Map.of(), Map.of());
    }

    public static String voltage(String rail) {
        return rail + ".voltage";
    }

    public static String ripple(String rail) {
        return rail + ".ripple";
    }

    public Optional<Estimate> value(String what) {
        return Optional.ofNullable(values.get(what));
    }

    /** An expectation however uncertain. */
    Optional<Estimate> any(String what) {
        return values.containsKey(what) ? value(what) : Optional.ofNullable(unbounded.get(what));
    }
}
