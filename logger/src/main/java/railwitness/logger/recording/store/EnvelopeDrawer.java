package railwitness.logger.recording.store;

import java.util.Arrays;
import railwitness.drivers.reading.Channel;

/** Draws readings and summaries into the columns of an envelope. */
final class EnvelopeDrawer {
    private final Channel channel;
    private final long[] edges;
    private final double[] lowest;
    private final double[] total;
    private final double[] highest;
    private final long[] measured;
    private final long[] readings;
    private int at;

    EnvelopeDrawer(Channel channel, long[] edges) {
        int columns = edges.length - 1;
        this.channel = channel;
        this.edges = edges;
        lowest = new double[columns];
        total = new double[columns];
        highest = new double[columns];
        measured = new long[columns];
        readings = new long[columns];
    }

    /**
     * Edges of at most so many columns, none narrower than a nanosecond.
     *
     * @param stepNanos inner edges lie at multiples of it; 1 or more, no wider than a column
     */
    static long[] edges(long from, long to, int columns, long stepNanos) {
        int count = (int) Math.min(columns, to - from);
        long[] edges = new long[count + 1];
        for (int i = 0; i <= count; i++) {
            long edge = from + Math.round((double) (to - from) / count * i);
            edges[i] = Math.floorDiv(edge + stepNanos / 2, stepNanos) * stepNanos;
        }
        edges[0] = from;
        edges[count] = to;
        return edges;
    }

    /** Adds what happened at one time, or a summary that lies in one column. */
    void add(long nanos, long readingCount, long measuredCount, double low, double high, double sum) {
        int column = column(nanos);
        if (column < 0) {
            return;
        }
        readings[column] += readingCount;
        if (measuredCount > 0 && Measurable.holds(low) && Measurable.holds(high)) {
            lowest[column] = measured[column] == 0 ? low : Math.min(lowest[column], low);
            highest[column] = measured[column] == 0 ? high : Math.max(highest[column], high);
            total[column] += sum;
            measured[column] += measuredCount;
        }
    }

    private int column(long nanos) {
        if (nanos < edges[0] || nanos >= edges[edges.length - 1]) {
            return -1;
        }
        if (nanos < edges[at]) {
            int found = Arrays.binarySearch(edges, nanos);
            at = found >= 0 ? found : -found - 2;
        }
        while (nanos >= edges[at + 1]) {
            at++;
        }
        return at;
    }

    Envelope envelope() {
        double[] mean = new double[total.length];
        for (int i = 0; i < mean.length; i++) {
            mean[i] = measured[i] == 0 ? 0 : total[i] / measured[i];
        }
        return new Envelope(channel, edges, lowest, mean, highest, measured, readings);
    }
}
