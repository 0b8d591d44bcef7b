package railwitness.logger.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import org.sqlite.SQLiteOpenMode;

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

    /** Opens without the right to change anything; {@code immutable} when nobody can change the file meanwhile. */
    static Connection openForReading(Path file, boolean immutable) throws SQLException {
        NativeLibrary.prepare();
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setOpenMode(SQLiteOpenMode.OPEN_URI);
        String url = "jdbc:sqlite:" + file.toAbsolutePath().toUri().toString().replaceFirst("^file:/+", "file:/")
                + (immutable ? "?immutable=1" : "");
        return config.createConnection(url);
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

    private static boolean is(SQLException e, SQLiteErrorCode code) {
        return e instanceof SQLiteException sqlite && (sqlite.getResultCode().code & 0xff) == code.code;
    }
}
