package railwitness.logger.store;

import java.util.Arrays;
import java.util.function.Consumer;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Reading;

/** Gathers a channel's numbers into arrays. */
final class TraceCollector implements Consumer<Reading> {
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

    @Override
    public void accept(Reading reading) {
        if (reading instanceof Measured measured) {
            add(measured);
        } else if (reading instanceof Missing) {
            missing++;
        } else {
            overloads++;
        }
    }

    private void add(Measured measured) {
        if (count == values.length) {
            values = Arrays.copyOf(values, 2 * count);
            requested = Arrays.copyOf(requested, 2 * count);
            replied = Arrays.copyOf(replied, 2 * count);
        }
        values[count] = measured.value();
        requested[count] = measured.requestedNanos();
        replied[count] = measured.repliedNanos();
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
