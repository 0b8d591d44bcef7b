package railwitness.logger.recording.store;

import java.sql.ResultSet;
import java.sql.SQLException;

/** Cells of a row, each refused in words when it is not what a recorder writes there. */
final class Cells {
    private Cells() {}

    static String text(ResultSet row, int column) throws SQLException {
        if (row.getObject(column) instanceof String text) {
            return text;
        }
        throw refused(row, column, "text");
    }

    static long whole(ResultSet row, int column) throws SQLException {
        Object cell = row.getObject(column);
        if (cell instanceof Long || cell instanceof Integer) {
            return ((Number) cell).longValue();
        }
        throw refused(row, column, "a whole number");
    }

    /** A number somebody can have set or measured. */
    static double number(ResultSet row, int column) throws SQLException {
        if (row.getObject(column) instanceof Number number && Measurable.holds(number.doubleValue())) {
            return number.doubleValue();
        }
        throw refused(row, column, "a number");
    }

    static byte[] bytes(ResultSet row, int column) throws SQLException {
        if (row.getObject(column) instanceof byte[] bytes) {
            return bytes;
        }
        throw refused(row, column, "bytes");
    }

    private static SQLException refused(ResultSet row, int column, String expected) throws SQLException {
        return new SQLException("the cell " + row.getMetaData().getColumnName(column) + " holds no "
                + expected.replaceFirst("^a ", ""));
    }
}
