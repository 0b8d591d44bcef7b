package railwitness.logger.recording.store;

import java.util.Arrays;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.store.block.ReadingColumns;

/** Gathers a channel's numbers into arrays. */
final class TraceCollector {
    private final Channel channel;
    private double[] values = new double[64];
    private long[] requested = new long[64];
    private long[] replied = new long[64];
    private int count;
    private int overloads;
    private int missing;

    TraceCollector(Channel channel) {
        this.channel = channel;
    }

    void add(ReadingColumns columns, TimeSpan span) {
        for (int i = 0; i < columns.size(); i++) {
            if (!span.holds(columns.repliedNanos(i))) {
                continue;
            }
            if (columns.kind(i) == ReadingColumns.MEASURED && Measurable.holds(columns.value(i))) {
                add(columns, i);
            } else if (columns.kind(i) == ReadingColumns.MISSING) {
                missing++;
            } else {
                overloads++;
            }
        }
    }

    private void add(ReadingColumns columns, int i) {
        if (count == values.length) {
            values = Arrays.copyOf(values, 2 * count);
            requested = Arrays.copyOf(requested, 2 * count);
            replied = Arrays.copyOf(replied, 2 * count);
        }
        values[count] = columns.value(i);
        requested[count] = columns.requestedNanos(i);
        replied[count] = columns.repliedNanos(i);
        count++;
    }

    Trace trace() {
        return new Trace(
                channel,
                Arrays.copyOf(values, count),
                Arrays.copyOf(requested, count),
                Arrays.copyOf(replied, count),
                overloads,
                missing);
    }
}
