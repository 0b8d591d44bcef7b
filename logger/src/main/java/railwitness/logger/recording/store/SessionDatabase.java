package railwitness.logger.recording.store;

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
import java.util.Map;
import railwitness.logger.recording.store.block.ReadingColumns;

/** The writing connection: each call of {@link #commit} is one transaction, all of it or nothing. */
final class SessionDatabase implements AutoCloseable {
    private final Connection connection;
    private final Statement plain;
    private final Map<RecordTable, PreparedStatement> inserts = new EnumMap<>(RecordTable.class);
    private final PreparedStatement insertReading;
    private final PreparedStatement deleteReading;
    private final PreparedStatement insertBlock;
    private final PreparedStatement insertLink;
    private final SummaryTable summaries;

    private SessionDatabase(Connection connection) throws SQLException {
        this.connection = connection;
        this.plain = connection.createStatement();
        for (RecordTable table : RecordTable.values()) {
            inserts.put(table, connection.prepareStatement(table.insertSql()));
        }
        insertReading = connection.prepareStatement(
                "INSERT INTO reading (seq, channel, requested_ns, replied_ns, value, reason) VALUES (?,?,?,?,?,?)");
        deleteReading = connection.prepareStatement("DELETE FROM reading WHERE seq = ?");
        insertBlock = connection.prepareStatement(
                "INSERT INTO block (first_seq, channel, readings, from_ns, to_ns, packed) VALUES (?,?,?,?,?,?)");
        summaries = new SummaryTable(connection, "summary");
        insertLink = connection.prepareStatement("INSERT INTO link (last_seq, at_ns, digest) VALUES (?,?,?)");
    }

    static SessionDatabase create(Path file) throws SQLException {
        Connection connection = Sqlite.openForWriting(file);
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA auto_vacuum = INCREMENTAL");
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = FULL");
            statement.execute("PRAGMA busy_timeout = 10000");
            statement.execute("BEGIN IMMEDIATE");
            statement.execute("PRAGMA application_id = " + Sqlite.APPLICATION_ID);
            statement.execute("PRAGMA user_version = " + Sqlite.SCHEMA);
            createTables(connection);
            statement.execute("COMMIT");
            return new SessionDatabase(connection);
        } catch (SQLException e) {
            Sqlite.closeQuietly(connection);
            throw e;
        }
    }

    /** An interrupted session's file, to be written on. */
    static SessionDatabase reopen(Path file) throws SQLException {
        Connection connection = Sqlite.openForWriting(file);
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = FULL");
            statement.execute("PRAGMA busy_timeout = 10000");
            return new SessionDatabase(connection);
        } catch (SQLException e) {
            Sqlite.closeQuietly(connection);
            throw e;
        }
    }

    static void createTables(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            for (String sql : schema().split(";\\s*\n")) {
                statement.execute(sql);
            }
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
    void commit(Batch batch, Collection<HotChannel> channels) throws SQLException {
        plain.execute("BEGIN IMMEDIATE");
        for (RecordRow row : batch.rows) {
            insert(row);
        }
        for (BlockRow block : batch.blocks) {
            insert(block);
        }
        for (HotChannel hot : channels) {
            for (Minute minute : hot.unpacked()) {
                insertReadings(hot.id(), minute);
            }
        }
        for (LinkRow link : batch.links) {
            insertLink.setLong(1, link.lastSeq());
            insertLink.setLong(2, link.atNanos());
            insertLink.setBytes(3, link.digest());
            insertLink.executeUpdate();
        }
        plain.execute("COMMIT");
    }

    private void insert(BlockRow block) throws SQLException {
        for (long seq : block.plainRows()) {
            deleteReading.setLong(1, seq);
            deleteReading.executeUpdate();
        }
        insertBlock.setLong(1, block.firstSeq());
        insertBlock.setInt(2, block.channel());
        insertBlock.setInt(3, block.readings());
        insertBlock.setLong(4, block.fromNanos());
        insertBlock.setLong(5, block.toNanos());
        insertBlock.setBytes(6, block.packed());
        insertBlock.executeUpdate();
        summaries.add(block.channel(), block.summaries());
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

    private void insertReadings(int channel, Minute minute) throws SQLException {
        ReadingColumns columns = minute.columns();
        for (int i = minute.committed(); i < columns.size(); i++) {
            insertReading.setLong(1, columns.seq(i));
            insertReading.setInt(2, channel);
            insertReading.setLong(3, columns.requestedNanos(i));
            insertReading.setLong(4, columns.repliedNanos(i));
            insertReading.setObject(5, columns.kind(i) == ReadingColumns.MEASURED ? columns.value(i) : null);
            insertReading.setObject(6, columns.kind(i) == ReadingColumns.MISSING ? columns.payload(i) : null);
            insertReading.executeUpdate();
        }
    }

    /** Folds the write-ahead log in and leaves one plain file. */
    void foldIn() throws SQLException {
        giveBackUnusedPages();
        plain.execute("PRAGMA wal_checkpoint(TRUNCATE)");
        plain.execute("PRAGMA journal_mode = DELETE");
    }

    private void giveBackUnusedPages() throws SQLException {
        // Frees one page a step, and of the driver's calls only this one steps to the end.
        plain.executeUpdate("PRAGMA incremental_vacuum");
    }

    /** Writes all that is committed into a new plain file. */
    void copyInto(Path copy) throws SQLException {
        try (PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
            vacuum.setString(1, copy.toString());
            vacuum.execute();
        }
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
