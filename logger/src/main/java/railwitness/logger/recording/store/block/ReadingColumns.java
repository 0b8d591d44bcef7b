package railwitness.logger.recording.store.block;

import java.util.Arrays;

/** Readings of one channel in recording order, kept as columns. Grows as needed; not for several threads. */
public final class ReadingColumns {
    /** A finite number came; the payload holds its bits (IEEE 754 binary64). */
    public static final int MEASURED = 1;
    /** Out of range; the payload is zero. */
    public static final int OVERLOAD = 2;
    /** Nothing came; the payload is the number of the reason. */
    public static final int MISSING = 3;

    private long[] seqs;
    private long[] requested;
    private long[] replied;
    private byte[] kinds;
    private long[] payloads;
    private int size;

    public ReadingColumns(int room) {
        seqs = new long[room];
        requested = new long[room];
        replied = new long[room];
        kinds = new byte[room];
        payloads = new long[room];
    }

    public int size() {
        return size;
    }

    /** Number of a reading in the recording order of the session. */
    public long seq(int i) {
        return seqs[i];
    }

    public long requestedNanos(int i) {
        return requested[i];
    }

    public long repliedNanos(int i) {
        return replied[i];
    }

    /** One of {@link #MEASURED}, {@link #OVERLOAD}, {@link #MISSING}. */
    public int kind(int i) {
        return kinds[i];
    }

    public long payload(int i) {
        return payloads[i];
    }

    /** The number of a measured reading. */
    public double value(int i) {
        return Double.longBitsToDouble(payloads[i]);
    }

    public void add(long seq, long requestedNanos, long repliedNanos, int kind, long payload) {
        if (size == seqs.length) {
            grow(2 * size + 16);
        }
        seqs[size] = seq;
        requested[size] = requestedNanos;
        replied[size] = repliedNanos;
        kinds[size] = (byte) kind;
        payloads[size] = payload;
        size++;
    }

    public void clear() {
        size = 0;
    }

    /** How many are of that kind. */
    int count(int kind) {
        int count = 0;
        for (int i = 0; i < size; i++) {
            count += kinds[i] == kind ? 1 : 0;
        }
        return count;
    }

    /** Makes room for so many readings whose columns are filled in afterwards. */
    void reset(int newSize) {
        if (seqs.length < newSize) {
            grow(newSize);
        }
        size = newSize;
        Arrays.fill(payloads, 0, size, 0);
    }

    long[] seqs() {
        return seqs;
    }

    long[] requested() {
        return requested;
    }

    long[] replied() {
        return replied;
    }

    byte[] kinds() {
        return kinds;
    }

    long[] payloads() {
        return payloads;
    }

    private void grow(int room) {
        seqs = Arrays.copyOf(seqs, room);
        requested = Arrays.copyOf(requested, room);
        replied = Arrays.copyOf(replied, room);
        kinds = Arrays.copyOf(kinds, room);
        payloads = Arrays.copyOf(payloads, room);
    }
}
