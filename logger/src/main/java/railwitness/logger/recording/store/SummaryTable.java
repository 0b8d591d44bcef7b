package railwitness.logger.recording.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import railwitness.logger.recording.store.block.Summary;

/** Adds a block's share to the summaries; the same way when they are written and when they are worked out again. */
final class SummaryTable {
    private final PreparedStatement upsert;

    SummaryTable(Connection connection, String table) throws SQLException {
        upsert = connection.prepareStatement("INSERT INTO " + table
                + " (channel, span_s, start_s, readings, measured, lowest, highest, total) VALUES (?,?,?,?,?,?,?,?)"
                + " ON CONFLICT (channel, span_s, start_s) DO UPDATE SET readings = readings + excluded.readings,"
                + " measured = measured + excluded.measured,"
                + " lowest = min(ifnull(lowest, excluded.lowest), ifnull(excluded.lowest, lowest)),"
                + " highest = max(ifnull(highest, excluded.highest), ifnull(excluded.highest, highest)),"
                + " total = total + excluded.total");
    }

    void add(long channel, List<Summary> summaries) throws SQLException {
        for (Summary summary : summaries) {
            upsert.setLong(1, channel);
            upsert.setInt(2, summary.spanSeconds());
            upsert.setLong(3, summary.startSeconds());
            upsert.setLong(4, summary.readings());
            upsert.setLong(5, summary.measured());
            upsert.setObject(6, summary.measured() == 0 ? null : summary.lowest());
            upsert.setObject(7, summary.measured() == 0 ? null : summary.highest());
            upsert.setDouble(8, summary.total());
            upsert.executeUpdate();
        }
    }
}
