package railwitness.logger.recording.store;

import railwitness.logger.recording.store.block.BlockCodec;
import railwitness.logger.recording.store.block.ReadingColumns;

/** Readings of one channel that will become one block: at most a minute long, at most as many as a block holds. */
final class Minute {
    static final long NANOS = 60_000_000_000L;

    private final ReadingColumns columns = new ReadingColumns(512);
    private long startNanos;
    private int committed;

    /** True when a reading answered then belongs into the next block. */
    boolean isOverAt(long repliedNanos) {
        int size = columns.size();
        return size > 0
                && (size == BlockCodec.MOST_READINGS
                        || repliedNanos < startNanos
                        || repliedNanos - startNanos >= NANOS);
    }

    void add(long seq, long requestedNanos, long repliedNanos, int kind, long payload) {
        if (columns.size() == 0) {
            startNanos = Math.floorDiv(repliedNanos, NANOS) * NANOS;
        }
        columns.add(seq, requestedNanos, repliedNanos, kind, payload);
    }

    ReadingColumns columns() {
        return columns;
    }

    /** How many of the readings, from the first, stand as plain rows in the file. */
    int committed() {
        return committed;
    }

    void markCommitted() {
        committed = columns.size();
    }

    void clear() {
        columns.clear();
        committed = 0;
    }
}
