package railwitness.logger.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.function.Consumer;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Reading;

/** Reads a channel's readings back, packed or not. */
final class ReadingReader {
    private final Connection connection;

    ReadingReader(Connection connection) {
        this.connection = connection;
    }

    void each(Channel channel, long id, TimeSpan span, Consumer<Reading> sink) throws SQLException {
        String sql = "SELECT requested_ns, replied_ns, value, (SELECT text FROM reason WHERE seq = reading.reason)"
                + " FROM reading WHERE channel = ? AND replied_ns >= ? AND replied_ns < ? ORDER BY seq";
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            statement.setLong(1, id);
            statement.setLong(2, span.fromNanos());
            statement.setLong(3, span.toNanos());
            try (ResultSet rows = statement.executeQuery()) {
                while (rows.next()) {
                    sink.accept(reading(channel, rows));
                }
            }
        }
    }

    Optional<Reading> last(Channel channel, long id) throws SQLException {
        String sql = "SELECT requested_ns, replied_ns, value, (SELECT text FROM reason WHERE seq = reading.reason)"
                + " FROM reading WHERE channel = ? ORDER BY seq DESC LIMIT 1";
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            statement.setLong(1, id);
            try (ResultSet rows = statement.executeQuery()) {
                return rows.next() ? Optional.of(reading(channel, rows)) : Optional.empty();
            }
        }
    }

    private static Reading reading(Channel channel, ResultSet row) throws SQLException {
        long requested = row.getLong(1);
        long replied = row.getLong(2);
        String reason = row.getString(4);
        double value = row.getDouble(3);
        if (!row.wasNull()) {
            return new Measured(channel, value, requested, replied);
        }
        return reason == null
                ? new Overload(channel, requested, replied)
                : new Missing(channel, reason, requested, replied);
    }
}
