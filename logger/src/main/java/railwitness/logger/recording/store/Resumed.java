package railwitness.logger.recording.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.store.block.ReadingColumns;

/**
 * What an interrupted session holds that whoever goes on with it must know.
 *
 * @param lastSeq number of its last record
 * @param lastNanos its time, ns
 * @param digest of the whole chain so far
 * @param channels numbers of the channels' records
 * @param reasons numbers of the reasons' records
 * @param plain readings that are not packed yet, in recording order
 */
record Resumed(
        SessionHead head,
        long lastSeq,
        long lastNanos,
        byte[] digest,
        Map<Channel, Integer> channels,
        Map<String, Long> reasons,
        List<Plain> plain) {

    /** A reading as it stands in the file. */
    record Plain(Channel channel, long seq, long requestedNanos, long repliedNanos, int kind, long payload) {}

    /** @throws StoreException when the session has ended, is being recorded, or its last link is not its end */
    static Resumed of(Path file) {
        SessionHead head;
        long last;
        try (SessionFile session = SessionFile.open(file)) {
            SessionState state = session.state();
            if (state != SessionState.INTERRUPTED) {
                throw new StoreException("session file " + file + " is " + state.word()
                        + ", not interrupted; only an interrupted one can be gone on with");
            }
            head = session.head();
            last = session.lastNanos();
        }
        OpenedFile opened = OpenedFile.open(file);
        try (Connection connection = opened.connection();
                Statement statement = connection.createStatement()) {
            opened.bound().begin();
            return read(file, head, last, statement);
        } catch (SQLException e) {
            throw OpenedFile.damaged(file, e);
        }
    }

    private static Resumed read(Path file, SessionHead head, long last, Statement statement) throws SQLException {
        long seq;
        byte[] digest;
        try (ResultSet row =
                statement.executeQuery("SELECT last_seq, digest FROM link ORDER BY last_seq DESC LIMIT 1")) {
            if (!row.next()) {
                throw new StoreException("session file " + file + " carries no digest yet; begin a new session");
            }
            seq = row.getLong(1);
            digest = row.getBytes(2);
        }
        for (RecordTable table : RecordTable.values()) {
            if (number(statement, "SELECT ifnull(max(seq), 0) FROM " + table.tableName()) > seq) {
                throw new StoreException(
                        "session file " + file + " holds records behind its last digest: it is not as it was recorded");
            }
        }
        Map<Channel, Integer> channels = new LinkedHashMap<>();
        Map<Integer, Channel> byId = new HashMap<>();
        try (ResultSet rows = statement.executeQuery("SELECT seq, name FROM channel ORDER BY seq")) {
            while (rows.next()) {
                Channel channel = Channel.of(rows.getString(2));
                channels.put(channel, rows.getInt(1));
                byId.put(rows.getInt(1), channel);
            }
        }
        Map<String, Long> reasons = new HashMap<>();
        try (ResultSet rows = statement.executeQuery("SELECT seq, text FROM reason ORDER BY seq")) {
            while (rows.next()) {
                reasons.put(rows.getString(2), rows.getLong(1));
            }
        }
        return new Resumed(head, seq, last, digest, channels, reasons, plain(statement, byId));
    }

    private static List<Plain> plain(Statement statement, Map<Integer, Channel> byId) throws SQLException {
        List<Plain> plain = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery(
                "SELECT seq, channel, requested_ns, replied_ns, value, reason FROM reading ORDER BY seq")) {
            while (rows.next()) {
                rows.getLong(6);
                boolean missing = !rows.wasNull();
                long reason = rows.getLong(6);
                double value = rows.getDouble(5);
                boolean overload = rows.wasNull() && !missing;
                int kind =
                        missing ? ReadingColumns.MISSING : overload ? ReadingColumns.OVERLOAD : ReadingColumns.MEASURED;
                long payload = missing ? reason : overload ? 0 : Double.doubleToRawLongBits(value);
                plain.add(new Plain(
                        byId.get(rows.getInt(2)), rows.getLong(1), rows.getLong(3), rows.getLong(4), kind, payload));
            }
        }
        return plain;
    }

    private static long number(Statement statement, String sql) throws SQLException {
        try (ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        }
    }
}
