package railwitness.logger.recording.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import railwitness.logger.recording.store.block.BlockCodec;
import railwitness.logger.recording.store.block.ReadingColumns;
import railwitness.logger.recording.store.block.Summarizer;
import railwitness.logger.recording.store.chain.HashChain;

/** The packed readings of one channel; on its way it works the summaries out again. */
final class BlockSource implements RecordSource {
    private final long channel;
    private final String name;
    private final FaultList faults;
    private final BlockCodec codec;
    private final SummaryTable again;
    private final PreparedStatement block;
    private final long[] blocks;
    private final ReadingColumns columns = new ReadingColumns(512);
    private int nextBlock;
    private int at;
    private long count;
    private long lastNanos;

    BlockSource(
            Connection connection, long channel, String name, BlockCodec codec, SummaryTable again, FaultList faults)
            throws SQLException {
        this.channel = channel;
        this.name = name;
        this.codec = codec;
        this.again = again;
        this.faults = faults;
        this.blocks = blocks(connection, channel);
        this.block =
                connection.prepareStatement("SELECT packed, readings, from_ns, to_ns FROM block WHERE first_seq = ?");
        nextBlock();
    }

    private static long[] blocks(Connection connection, long channel) throws SQLException {
        LongList numbers = new LongList();
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT first_seq FROM block WHERE channel = ? ORDER BY first_seq")) {
            statement.setLong(1, channel);
            ResultSet rows = statement.executeQuery();
            while (rows.next()) {
                numbers.add(rows.getLong(1));
            }
        }
        return numbers.toArray();
    }

    private void nextBlock() throws SQLException {
        at = 0;
        columns.clear();
        while (columns.size() == 0 && nextBlock < blocks.length) {
            open(blocks[nextBlock++]);
        }
    }

    private void open(long number) throws SQLException {
        block.setLong(1, number);
        try (ResultSet row = block.executeQuery()) {
            codec.unpack(row.getBytes(1), columns);
            if (!agrees(number, row)) {
                faults.addFrom(
                        Math.floorDiv(columns.repliedNanos(0), 1_000_000_000L),
                        "what stands beside the packed readings of " + name + " does not agree with them");
            }
            again.add(channel, Summarizer.of(columns));
        } catch (IllegalArgumentException | NullPointerException e) {
            columns.clear();
            faults.add("the packed readings of " + name + " in block " + number + " are damaged");
        }
    }

    private boolean agrees(long number, ResultSet row) throws SQLException {
        long from = Long.MAX_VALUE;
        long to = Long.MIN_VALUE;
        for (int i = 0; i < columns.size(); i++) {
            from = Math.min(from, columns.repliedNanos(i));
            to = Math.max(to, columns.repliedNanos(i));
        }
        return columns.seq(0) == number
                && isWhole(row.getObject(2), columns.size())
                && isWhole(row.getObject(3), from)
                && isWhole(row.getObject(4), to);
    }

    private static boolean isWhole(Object cell, long expected) {
        return (cell instanceof Long || cell instanceof Integer) && ((Number) cell).longValue() == expected;
    }

    @Override
    public long seq() {
        return at < columns.size() ? columns.seq(at) : Long.MAX_VALUE;
    }

    @Override
    public void feed(HashChain chain) throws SQLException {
        lastNanos = columns.repliedNanos(at);
        chain.reading(columns.kind(at), (int) channel, columns.requestedNanos(at), lastNanos, columns.payload(at));
        count++;
        if (++at == columns.size()) {
            nextBlock();
        }
    }

    @Override
    public long nanos() {
        return lastNanos;
    }

    long count() {
        return count;
    }

    int blockCount() {
        return blocks.length;
    }

    @Override
    public String words() {
        return "readings";
    }

    @Override
    public void close() throws SQLException {
        block.close();
    }
}
