package railwitness.logger.recording.store;

import railwitness.drivers.reading.Channel;

/**
 * A channel drawn into columns: of every column the lowest, mean and highest number, so that no spike is lost. A column
 * covers {@code edgeNanos[i]} up to, not including, {@code edgeNanos[i + 1]} by the time of the reply. A column without
 * a number has {@code measured[i] == 0}; its lowest, mean and highest then say nothing.
 *
 * @param edgeNanos one more than there are columns, ascending, ns
 * @param lowest least number of each column, in the channel's unit
 * @param mean arithmetic mean of each column's numbers
 * @param highest greatest number of each column
 * @param measured how many numbers each column has
 * @param readings how many readings each column has, overloads and silences among them
 */
public record Envelope(
        Channel channel,
        long[] edgeNanos,
        double[] lowest,
        double[] mean,
        double[] highest,
        long[] measured,
        long[] readings) {
    public int columns() {
        return mean.length;
    }
}
