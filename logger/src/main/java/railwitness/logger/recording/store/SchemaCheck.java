package railwitness.logger.recording.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.TreeMap;

/** Holds the tables of a file against those of a session: a view or another table in the place of one is refused. */
final class SchemaCheck {
    private static final String ENTRIES = "SELECT name, type, sql FROM sqlite_master";
    private static final Map<String, String> EXPECTED = expected();

    private SchemaCheck() {}

    /** Name to kind and definition, as this program makes them. */
    static Map<String, String> expectedEntries() {
        return EXPECTED;
    }

    private static Map<String, String> expected() {
        NativeLibrary.prepare();
        try (Connection fresh = DriverManager.getConnection("jdbc:sqlite::memory:")) {
            SessionDatabase.createTables(fresh);
            return Map.copyOf(entries(fresh));
        } catch (SQLException e) {
            throw new StoreException(
                    "the tables of a session cannot be made (" + e.getMessage() + "); install the" + " program anew",
                    e);
        }
    }

    /** Kind and definition by name. */
    static Map<String, String> entries(Connection connection) throws SQLException {
        Map<String, String> entries = new TreeMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(ENTRIES)) {
            while (rows.next()) {
                String sql = rows.getString(3);
                entries.put(String.valueOf(rows.getString(1)), rows.getString(2) + " " + (sql == null ? "" : sql));
            }
        }
        return entries;
    }

    /** Throws StoreException when a table that will be read is not the one of a session. */
    static void refuseOthers(Path file, Connection connection) throws SQLException {
        Map<String, String> found = entries(connection);
        EXPECTED.forEach((name, kind) -> {
            if (kind.startsWith("table") && !kind.equals(found.get(name))) {
                throw new StoreException("file " + file + " is no session as it was recorded: its table " + name
                        + (found.containsKey(name) ? " was replaced" : " is missing")
                        + "; take a copy of it from elsewhere");
            }
        });
    }
}
