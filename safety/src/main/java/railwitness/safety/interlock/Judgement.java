package railwitness.safety.interlock;

import java.util.Optional;
import railwitness.drivers.reading.Reading;

/**
 * What the last value of a watch was worth.
 *
 * @param askedNanos when the oldest question behind it went out, ns
 * @param inside false when it broke its limits
 * @param shown the value in words
 */
record Judgement(long askedNanos, boolean inside, String shown, Limits limits, Reading reading) {
    Trip outside(Watch watch, long nowNanos) {
        String words = watch.name() + " is " + shown + ", allowed is "
                + limits.words(watch.subject().unit());
        return new Trip(Trip.Kind.OUTSIDE, watch.name(), Optional.of(reading), Optional.of(limits), nowNanos, words);
    }
}
