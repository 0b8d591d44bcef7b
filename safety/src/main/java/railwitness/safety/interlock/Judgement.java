package railwitness.safety.interlock;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Reading;

/**
 * What the last value of a watch was worth.
 *
 * @param askedNanos when the oldest question behind it went out, ns
 * @param inside false when it broke its limits
 * @param value in the watch's unit; empty for one beyond the range
 */
record Judgement(long askedNanos, boolean inside, OptionalDouble value, Limits limits, Reading reading) {
    Trip outside(Watch watch, long nowNanos) {
        String unit = watch.subject().unit();
        String shown = value.isPresent() ? Limits.number(value.getAsDouble()) + " " + unit : "beyond the range";
        String words = watch.name() + " is " + shown + ", allowed is " + limits.words(unit);
        return new Trip(Trip.Kind.OUTSIDE, watch.name(), Optional.of(reading), Optional.of(limits), nowNanos, words);
    }
}
