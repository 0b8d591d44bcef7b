package railwitness.logger.recording.store;

import java.util.ArrayList;
import java.util.List;

/** What waits for the next commit. */
final class Batch {
    private static final int MOST_BLOCK_BYTES = 8 << 20;
    private static final int MOST_ROWS = 20_000;

    final List<RecordRow> rows = new ArrayList<>();
    final List<BlockRow> blocks = new ArrayList<>();
    final List<LinkRow> links = new ArrayList<>();
    private int blockBytes;

    void add(BlockRow block) {
        blocks.add(block);
        blockBytes += block.packed().length;
    }

    boolean isEmpty() {
        return rows.isEmpty() && blocks.isEmpty() && links.isEmpty();
    }

    /** True when it is better written before more comes. */
    boolean isLarge() {
        return blockBytes > MOST_BLOCK_BYTES || rows.size() > MOST_ROWS || links.size() > MOST_ROWS;
    }

    void clear() {
        rows.clear();
        blocks.clear();
        links.clear();
        blockBytes = 0;
    }
}
