package railwitness.logger.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** How this program opens SQLite files, and how it tells SQLite's troubles apart. */
final class Sqlite {
    /** Marks a file as a session of this program: the letters RWIT. */
    static final int APPLICATION_ID = 0x52574954;

    /** Number of the newest schema this program knows. */
    static final int SCHEMA = 1;

    private Sqlite() {}

    static Connection openForWriting(Path file) throws SQLException {
        NativeLibrary.prepare();
        SQLiteConfig config = new SQLiteConfig();
        // Asked for after each row otherwise, which costs more than the row.
        config.setGetGeneratedKeys(false);
        return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
    }

    /** Opens without the right to change anything. */
    static Connection openForReading(Path file) throws SQLException {
        NativeLibrary.prepare();
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
    }

    static void closeQuietly(Connection connection) {
        if (connection != null) {
            try {
                connection.close();
            } catch (SQLException e) {
                // Nothing is lost: what was committed is in the file.
            }
        }
    }

    static boolean isBusy(SQLException e) {
        return is(e, SQLiteErrorCode.SQLITE_BUSY);
    }

    static boolean isFull(SQLException e) {
        return is(e, SQLiteErrorCode.SQLITE_FULL);
    }

    /** True where SQLite may not make the companions that it needs beside the file. */
    static boolean isNotOpenable(SQLException e) {
        return is(e, SQLiteErrorCode.SQLITE_CANTOPEN) || is(e, SQLiteErrorCode.SQLITE_READONLY);
    }

    private static boolean is(SQLException e, SQLiteErrorCode code) {
        return e instanceof SQLiteException sqlite && (sqlite.getResultCode().code & 0xff) == code.code;
    }
}
