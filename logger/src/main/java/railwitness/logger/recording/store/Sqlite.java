package railwitness.logger.recording.store;

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

    /** The longest cell is a waveform of five million samples. */
    private static final int MOST_CELL_BYTES = 64 << 20;

    private static final int LEAST_CELL_BYTES = 1 << 20;

    private Sqlite() {}

    static Connection openForWriting(Path file) throws SQLException {
        NativeLibrary.prepare();
        SQLiteConfig config = new SQLiteConfig();
        // Asked for after each row otherwise, which costs more than the row.
        config.setGetGeneratedKeys(false);
        return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
    }

    /** Opens without the right to change anything, and without trust in what the file says of itself. */
    static Connection openForReading(Path file) throws SQLException {
        NativeLibrary.prepare();
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setPragma(SQLiteConfig.Pragma.LIMIT_LENGTH, String.valueOf(longestCell(file)));
        return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
    }

    /** No cell is longer than its file, whatever it says of itself. */
    private static long longestCell(Path file) {
        long bytes = file.toFile().length() + OpenedFile.wal(file).toFile().length();
        return Math.max(LEAST_CELL_BYTES, Math.min(MOST_CELL_BYTES, bytes));
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

    /** True where a question was broken off because it asked for too much work. */
    static boolean isInterrupted(SQLException e) {
        return is(e, SQLiteErrorCode.SQLITE_INTERRUPT);
    }

    /** True where SQLite may not make the companions that it needs beside the file. */
    static boolean isNotOpenable(SQLException e) {
        return is(e, SQLiteErrorCode.SQLITE_CANTOPEN) || is(e, SQLiteErrorCode.SQLITE_READONLY);
    }

    private static boolean is(SQLException e, SQLiteErrorCode code) {
        return e instanceof SQLiteException sqlite && (sqlite.getResultCode().code & 0xff) == code.code;
    }
}
