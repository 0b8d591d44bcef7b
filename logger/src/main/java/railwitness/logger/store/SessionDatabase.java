package railwitness.logger.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The writing connection: each call of {@link #commit} is one transaction, all of it or nothing. */
final class SessionDatabase implements AutoCloseable {
    private final Connection connection;
    private final Statement plain;
    private final Map<RecordTable, PreparedStatement> inserts = new EnumMap<>(RecordTable.class);
    private final PreparedStatement insertReading;
    private final PreparedStatement insertLink;

    private SessionDatabase(Connection connection) throws SQLException {
        this.connection = connection;
        this.plain = connection.createStatement();
        plain.execute("PRAGMA journal_mode = WAL");
        plain.execute("PRAGMA synchronous = FULL");
        plain.execute("PRAGMA busy_timeout = 10000");
        for (RecordTable table : RecordTable.values()) {
            inserts.put(table, connection.prepareStatement(table.insertSql()));
        }
        insertReading = connection.prepareStatement(
                "INSERT INTO reading (seq, channel, requested_ns, replied_ns, value, reason) VALUES (?,?,?,?,?,?)");
        insertLink = connection.prepareStatement("INSERT INTO link (last_seq, at_ns, digest) VALUES (?,?,?)");
    }

    static SessionDatabase create(Path file) throws SQLException {
        Connection connection = Sqlite.openForWriting(file);
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA application_id = " + Sqlite.APPLICATION_ID);
            statement.execute("PRAGMA user_version = " + Sqlite.SCHEMA);
            for (String sql : schema().split(";\\s*\n")) {
                statement.execute(sql);
            }
            return new SessionDatabase(connection);
        } catch (SQLException e) {
            Sqlite.closeQuietly(connection);
            throw e;
        }
    }

    static String schema() {
        try (InputStream in = SessionDatabase.class.getResourceAsStream("schema-" + Sqlite.SCHEMA + ".sql")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new StoreException("the schema inside the program cannot be read; install it anew", e);
        }
    }

    /** Writes everything that is pending in one transaction. */
    void commit(List<RecordRow> rows, Collection<HotChannel> channels, List<LinkRow> links) throws SQLException {
        plain.execute("BEGIN IMMEDIATE");
        for (RecordRow row : rows) {
            insert(row);
        }
        for (HotChannel hot : channels) {
            insertReadings(hot);
        }
        for (LinkRow link : links) {
            insertLink.setLong(1, link.lastSeq());
            insertLink.setLong(2, link.atNanos());
            insertLink.setBytes(3, link.digest());
            insertLink.executeUpdate();
        }
        plain.execute("COMMIT");
    }

    private void insert(RecordRow row) throws SQLException {
        PreparedStatement insert = inserts.get(row.table());
        insert.setLong(1, row.seq());
        Object[] cells = row.cells();
        for (int i = 0; i < cells.length; i++) {
            insert.setObject(i + 2, cells[i]);
        }
        insert.executeUpdate();
    }

    private void insertReadings(HotChannel hot) throws SQLException {
        for (int i = hot.committed; i < hot.size; i++) {
            insertReading.setLong(1, hot.seqs[i]);
            insertReading.setInt(2, hot.id);
            insertReading.setLong(3, hot.requested[i]);
            insertReading.setLong(4, hot.replied[i]);
            insertReading.setObject(5, hot.kinds[i] == 1 ? Double.longBitsToDouble(hot.payloads[i]) : null);
            insertReading.setObject(6, hot.kinds[i] == 3 ? hot.payloads[i] : null);
            insertReading.executeUpdate();
        }
    }

    /** Folds the write-ahead log in and leaves one plain file. */
    void foldIn() throws SQLException {
        plain.execute("PRAGMA wal_checkpoint(TRUNCATE)");
        plain.execute("PRAGMA journal_mode = DELETE");
    }

    /** Takes back a transaction that failed half-way; SQLite may have done so itself. */
    void rollBack() {
        try {
            plain.execute("ROLLBACK");
        } catch (SQLException e) {
            // No transaction is active: SQLite has rolled it back.
        }
    }

    @Override
    public void close() {
        Sqlite.closeQuietly(connection);
    }
}
