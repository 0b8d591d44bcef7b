package railwitness.logger.recording.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.function.Consumer;
import railwitness.logger.recording.store.block.BlockCodec;
import railwitness.logger.recording.store.block.ReadingColumns;

/**
 * Reads a channel's readings back, packed or plain. Every question is a short transaction, so that a recorder can go on
 * and fold its log in; a minute that is packed between two questions is found in the second place.
 */
final class ReadingReader implements AutoCloseable {
    private final Statement plain;
    private final PreparedStatement blockNumbers;
    private final PreparedStatement blockBytes;
    private final PreparedStatement plainRows;
    private final PreparedStatement lastPlain;
    private final PreparedStatement lastBlock;
    private final BlockCodec codec = new BlockCodec();
    private final ReadingColumns columns = new ReadingColumns(BlockCodec.MOST_READINGS);

    ReadingReader(Connection connection) throws SQLException {
        String row = "SELECT seq, requested_ns, replied_ns, value, reason FROM reading WHERE channel = ?";
        plain = connection.createStatement();
        blockNumbers = connection.prepareStatement("SELECT first_seq FROM block WHERE channel = ? AND first_seq > ?"
                + " AND from_ns > ? AND from_ns < ? AND to_ns >= ? ORDER BY first_seq");
        blockBytes = connection.prepareStatement("SELECT packed FROM block WHERE first_seq = ?");
        plainRows =
                connection.prepareStatement(row + " AND seq > ? AND replied_ns >= ? AND replied_ns < ? ORDER BY seq");
        lastPlain = connection.prepareStatement(row + " ORDER BY seq DESC LIMIT 1");
        lastBlock = connection.prepareStatement("SELECT max(first_seq) FROM block WHERE channel = ?");
    }

    /** Hands over the readings of a span in portions, in recording order; the portions may hold others around it. */
    void each(long channel, TimeSpan span, Consumer<ReadingColumns> sink) throws SQLException {
        long lastSeq = Long.MIN_VALUE;
        while (true) {
            for (long block : blocks(channel, span, lastSeq)) {
                unpack(block);
                lastSeq = columns.seq(columns.size() - 1);
                sink.accept(columns);
            }
            if (plainBehind(channel, span, lastSeq)) {
                sink.accept(columns);
                return;
            }
        }
    }

    /** Reads the plain rows, unless a block has come meanwhile. */
    private boolean plainBehind(long channel, TimeSpan span, long lastSeq) throws SQLException {
        begin();
        try {
            return blocks(channel, span, lastSeq).length == 0 && plain(channel, span, lastSeq);
        } finally {
            end();
        }
    }

    private long[] blocks(long channel, TimeSpan span, long lastSeq) throws SQLException {
        blockNumbers.setLong(1, channel);
        blockNumbers.setLong(2, lastSeq);
        blockNumbers.setLong(3, Math.max(span.fromNanos(), Long.MIN_VALUE + Minute.NANOS) - Minute.NANOS);
        blockNumbers.setLong(4, span.toNanos());
        blockNumbers.setLong(5, span.fromNanos());
        LongList numbers = new LongList();
        try (ResultSet rows = blockNumbers.executeQuery()) {
            while (rows.next()) {
                numbers.add(rows.getLong(1));
            }
        }
        return numbers.toArray();
    }

    private void unpack(long block) throws SQLException {
        blockBytes.setLong(1, block);
        try (ResultSet rows = blockBytes.executeQuery()) {
            codec.unpack(Cells.bytes(rows, 1), columns);
        } catch (IllegalArgumentException e) {
            throw new SQLException("block " + block + ": " + e.getMessage(), e);
        }
    }

    /** Adds nothing to what a summary tells but the rows that are not packed yet; within the caller's transaction. */
    ReadingColumns plainOnly(long channel, TimeSpan span) throws SQLException {
        plain(channel, span, Long.MIN_VALUE);
        return columns;
    }

    private boolean plain(long channel, TimeSpan span, long lastSeq) throws SQLException {
        plainRows.setLong(1, channel);
        plainRows.setLong(2, lastSeq);
        plainRows.setLong(3, span.fromNanos());
        plainRows.setLong(4, span.toNanos());
        columns.clear();
        try (ResultSet rows = plainRows.executeQuery()) {
            while (rows.next()) {
                add(rows);
            }
        }
        return true;
    }

    private void add(ResultSet row) throws SQLException {
        double value = row.getDouble(4);
        int kind = ReadingColumns.MEASURED;
        long payload = Double.doubleToRawLongBits(value);
        if (row.wasNull()) {
            payload = row.getLong(5);
            kind = row.wasNull() ? ReadingColumns.OVERLOAD : ReadingColumns.MISSING;
        }
        columns.add(row.getLong(1), row.getLong(2), row.getLong(3), kind, payload);
    }

    /** The columns that hold the channel's last reading as their last, if it has one. */
    Optional<ReadingColumns> last(long channel) throws SQLException {
        columns.clear();
        begin();
        try {
            lastPlain.setLong(1, channel);
            try (ResultSet rows = lastPlain.executeQuery()) {
                if (rows.next()) {
                    add(rows);
                    return Optional.of(columns);
                }
            }
            return lastPacked(channel);
        } finally {
            end();
        }
    }

    private Optional<ReadingColumns> lastPacked(long channel) throws SQLException {
        lastBlock.setLong(1, channel);
        long block;
        try (ResultSet rows = lastBlock.executeQuery()) {
            block = rows.getLong(1);
            if (rows.wasNull()) {
                return Optional.empty();
            }
        }
        unpack(block);
        return Optional.of(columns);
    }

    /** Begins a short transaction for reading: what is asked until {@link #end} belongs together. */
    void begin() throws SQLException {
        plain.execute("BEGIN");
    }

    void end() throws SQLException {
        plain.execute("COMMIT");
    }

    @Override
    public void close() {
        codec.close();
    }
}
