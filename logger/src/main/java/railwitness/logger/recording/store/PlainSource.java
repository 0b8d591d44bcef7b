package railwitness.logger.recording.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import railwitness.logger.recording.store.block.ReadingColumns;
import railwitness.logger.recording.store.chain.HashChain;

/** The readings that stand as plain rows. */
final class PlainSource implements RecordSource {
    private final Statement statement;
    private final ResultSet rows;
    private long seq;
    private long nanos;
    private long count;

    PlainSource(Connection connection) throws SQLException {
        statement = connection.createStatement();
        rows = statement.executeQuery(
                "SELECT seq, channel, requested_ns, replied_ns, value, reason, typeof(channel) || typeof(requested_ns)"
                        + " || typeof(replied_ns) || typeof(value) || typeof(reason) FROM reading ORDER BY seq");
        next();
    }

    private void next() throws SQLException {
        seq = rows.next() ? rows.getLong(1) : Long.MAX_VALUE;
    }

    @Override
    public long seq() {
        return seq;
    }

    long count() {
        return count;
    }

    @Override
    public void feed(HashChain chain) throws SQLException {
        nanos = rows.getLong(4);
        int kind = kind(rows.getString(7));
        long payload = kind == ReadingColumns.MEASURED
                ? Double.doubleToRawLongBits(rows.getDouble(5))
                : kind == ReadingColumns.MISSING ? rows.getLong(6) : 0;
        chain.reading(kind, rows.getInt(2), rows.getLong(3), nanos, payload);
        count++;
        next();
    }

    /** Zero, which no recording has, when the cells are not of the kinds in which readings are kept. */
    private static int kind(String types) {
        return switch (types) {
            case "integerintegerintegerrealnull" -> ReadingColumns.MEASURED;
            case "integerintegerintegernullnull" -> ReadingColumns.OVERLOAD;
            case "integerintegerintegernullinteger" -> ReadingColumns.MISSING;
            default -> 0;
        };
    }

    @Override
    public long nanos() {
        return nanos;
    }

    @Override
    public String words() {
        return "readings";
    }

    @Override
    public void close() throws SQLException {
        statement.close();
    }
}
