package railwitness.logger.recording.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import railwitness.logger.recording.store.block.ReadingColumns;
import railwitness.logger.recording.store.block.Summary;

/** Draws an envelope from summaries where they are fine enough, and from the readings themselves where they are not. */
final class SummaryReader {
    private static final long SECOND_NANOS = 1_000_000_000L;

    private final PreparedStatement summaries;
    private final ReadingReader readings;

    SummaryReader(Connection connection, ReadingReader readings) throws SQLException {
        this.readings = readings;
        this.summaries =
                connection.prepareStatement("SELECT start_s, readings, measured, lowest, highest, total FROM summary"
                        + " WHERE channel = ? AND span_s = ? AND start_s >= ? AND start_s < ?");
    }

    /** Longest kept stretch that is not longer than a column, s; zero when none is. */
    static int spanFor(long fromNanos, long toNanos, int columns) {
        int best = 0;
        for (int span : Summary.spans()) {
            if ((toNanos - fromNanos) / columns >= span * SECOND_NANOS) {
                best = span;
            }
        }
        return best;
    }

    void draw(long channel, TimeSpan span, int spanSeconds, EnvelopeDrawer drawer) throws SQLException {
        if (spanSeconds == 0) {
            drawReadings(channel, span, drawer);
            return;
        }
        long spanNanos = spanSeconds * SECOND_NANOS;
        long from = -Math.floorDiv(-span.fromNanos(), spanNanos) * spanNanos;
        long to = Math.floorDiv(span.toNanos(), spanNanos) * spanNanos;
        drawReadings(channel, new TimeSpan(span.fromNanos(), from), drawer);
        readings.begin();
        try {
            drawSummaries(channel, spanSeconds, from / SECOND_NANOS, to / SECOND_NANOS, drawer);
            draw(readings.plainOnly(channel, new TimeSpan(from, to)), new TimeSpan(from, to), drawer);
        } finally {
            readings.end();
        }
        drawReadings(channel, new TimeSpan(to, span.toNanos()), drawer);
    }

    private void drawSummaries(long channel, int spanSeconds, long from, long to, EnvelopeDrawer drawer)
            throws SQLException {
        summaries.setLong(1, channel);
        summaries.setInt(2, spanSeconds);
        summaries.setLong(3, from);
        summaries.setLong(4, to);
        try (ResultSet row = summaries.executeQuery()) {
            while (row.next()) {
                drawer.add(
                        row.getLong(1) * SECOND_NANOS,
                        row.getLong(2),
                        row.getLong(3),
                        row.getDouble(4),
                        row.getDouble(5),
                        row.getDouble(6));
            }
        }
    }

    private void drawReadings(long channel, TimeSpan span, EnvelopeDrawer drawer) throws SQLException {
        if (span.fromNanos() < span.toNanos()) {
            readings.each(channel, span, columns -> draw(columns, span, drawer));
        }
    }

    private static void draw(ReadingColumns columns, TimeSpan span, EnvelopeDrawer drawer) {
        for (int i = 0; i < columns.size(); i++) {
            long replied = columns.repliedNanos(i);
            if (replied < span.fromNanos() || replied >= span.toNanos()) {
                continue;
            }
            if (columns.kind(i) == ReadingColumns.MEASURED) {
                double value = columns.value(i);
                drawer.add(replied, 1, 1, value, value, value);
            } else {
                drawer.add(replied, 1, 0, 0, 0, 0);
            }
        }
    }
}
