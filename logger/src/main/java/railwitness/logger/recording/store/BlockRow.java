package railwitness.logger.recording.store;

import java.util.List;
import railwitness.logger.recording.store.block.BlockCodec;
import railwitness.logger.recording.store.block.ReadingColumns;
import railwitness.logger.recording.store.block.Summarizer;
import railwitness.logger.recording.store.block.Summary;

/**
 * A packed minute on its way into the file.
 *
 * @param plainRows numbers of those readings that stand as plain rows until then
 */
record BlockRow(
        long firstSeq,
        int channel,
        int readings,
        long fromNanos,
        long toNanos,
        byte[] packed,
        List<Summary> summaries,
        long[] plainRows) {
    static BlockRow of(int channel, Minute minute, BlockCodec codec) {
        ReadingColumns columns = minute.columns();
        long from = Long.MAX_VALUE;
        long to = Long.MIN_VALUE;
        for (int i = 0; i < columns.size(); i++) {
            from = Math.min(from, columns.repliedNanos(i));
            to = Math.max(to, columns.repliedNanos(i));
        }
        long[] plainRows = new long[minute.committed()];
        for (int i = 0; i < plainRows.length; i++) {
            plainRows[i] = columns.seq(i);
        }
        return new BlockRow(
                columns.seq(0),
                channel,
                columns.size(),
                from,
                to,
                codec.pack(columns),
                Summarizer.of(columns),
                plainRows);
    }
}
