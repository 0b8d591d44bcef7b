package railwitness.logger.store;

import java.util.Arrays;
import railwitness.drivers.reading.Channel;

/** The readings of one channel that are not yet packed. */
final class HotChannel {
    final Channel channel;
    final int id;
    long[] seqs = new long[256];
    long[] requested = new long[256];
    long[] replied = new long[256];
    byte[] kinds = new byte[256];
    long[] payloads = new long[256];
    int size;
    /** How many of them stand as plain rows in the file. */
    int committed;

    HotChannel(Channel channel, int id) {
        this.channel = channel;
        this.id = id;
    }

    void add(long seq, long requestedNanos, long repliedNanos, int kind, long payload) {
        if (size == seqs.length) {
            grow();
        }
        seqs[size] = seq;
        requested[size] = requestedNanos;
        replied[size] = repliedNanos;
        kinds[size] = (byte) kind;
        payloads[size] = payload;
        size++;
    }

    private void grow() {
        int room = size * 2;
        seqs = Arrays.copyOf(seqs, room);
        requested = Arrays.copyOf(requested, room);
        replied = Arrays.copyOf(replied, room);
        kinds = Arrays.copyOf(kinds, room);
        payloads = Arrays.copyOf(payloads, room);
    }
}
