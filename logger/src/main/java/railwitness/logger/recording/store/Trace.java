package railwitness.logger.recording.store;

import railwitness.drivers.reading.Channel;

/**
 * The numbers of one channel over a span, in recording order; overloads and silences are only counted.
 *
 * @param values in the channel's unit
 * @param requestedNanos when each was asked for, ns
 * @param repliedNanos when each was answered, ns
 * @param overloads how many readings were out of range, or numbers beyond all measuring
 * @param missing how many did not come
 */
public record Trace(
        Channel channel, double[] values, long[] requestedNanos, long[] repliedNanos, int overloads, int missing) {
    public int count() {
        return values.length;
    }
}
