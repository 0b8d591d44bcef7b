package railwitness.safety.interlock;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;
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
        Optional<Channel> channel = watch.derived() ? Optional.empty() : Optional.of(reading.channel());
        return Trip.outside(
                watch.name(), new Trip.Beyond(channel, value, watch.subject().unit(), limits), nowNanos);
    }
}
