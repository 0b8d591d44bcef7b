package railwitness.logger.store;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/** Opens a session for reading wherever it lies, or says in words why it is none. */
final class OpenedFile {
    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final int HEADER_BYTES = 100;

    private OpenedFile() {}

    static Connection open(Path file) {
        checkHeader(file);
        try {
            Connection connection = connect(file);
            try {
                checkPragmas(file, connection);
                return connection;
            } catch (SQLException | RuntimeException e) {
                Sqlite.closeQuietly(connection);
                throw e;
            }
        } catch (SQLException e) {
            throw damaged(file, e);
        } catch (IOException e) {
            throw new StoreException("session file " + file + " cannot be read: " + e.getMessage(), e);
        }
    }

    static StoreException damaged(Path file, Exception e) {
        return new StoreException(
                "session file " + file + " is damaged or cannot be read (" + e.getMessage()
                        + "); take a copy of it from elsewhere",
                e);
    }

    private static Connection connect(Path file) throws SQLException, IOException {
        try {
            return connectInPlace(file);
        } catch (SQLException e) {
            if (!Files.exists(wal(file)) || !Sqlite.isNotOpenable(e)) {
                throw e;
            }
            return connectInPlace(copyWithLog(file));
        }
    }

    private static Connection connectInPlace(Path file) throws SQLException {
        Connection connection = Sqlite.openForReading(file);
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA busy_timeout = 10000");
            statement.executeQuery("SELECT count(*) FROM sqlite_master").close();
            return connection;
        } catch (SQLException e) {
            Sqlite.closeQuietly(connection);
            throw e;
        }
    }

    /** An interrupted session in a read-only place cannot be opened with its log; a copy of both can. */
    private static Path copyWithLog(Path file) throws IOException {
        Path folder = Files.createTempDirectory("railwitness-copy");
        Path copy = folder.resolve(file.getFileName());
        folder.toFile().deleteOnExit();
        for (Path one : List.of(file, wal(file))) {
            Path target = folder.resolve(one.getFileName());
            Files.copy(one, target, StandardCopyOption.REPLACE_EXISTING);
            target.toFile().deleteOnExit();
        }
        return copy;
    }

    private static Path wal(Path file) {
        return file.resolveSibling(file.getFileName() + "-wal");
    }

    private static void checkHeader(Path file) {
        byte[] header = new byte[HEADER_BYTES];
        long length;
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "r")) {
            length = raw.length();
            if (length >= HEADER_BYTES) {
                raw.readFully(header);
            }
        } catch (IOException e) {
            throw new StoreException(
                    "session file " + file + (Files.exists(file) ? " cannot be read" : " is not there")
                            + "; check the name and the right to read it",
                    e);
        }
        if (length < HEADER_BYTES && !Files.exists(wal(file))) {
            throw new StoreException("session file " + file + " holds only " + length
                    + " bytes: it is cut short; take a copy of it from elsewhere");
        }
        if (length >= HEADER_BYTES && !java.util.Arrays.equals(header, 0, MAGIC.length, MAGIC, 0, MAGIC.length)) {
            throw new StoreException("file " + file + " is not a session: it is no SQLite file");
        }
        checkLength(file, header, length);
    }

    private static void checkLength(Path file, byte[] header, long length) {
        int pageBytes = (header[16] & 0xff) << 8 | header[17] & 0xff;
        long pages =
                (header[28] & 0xffL) << 24 | (header[29] & 0xff) << 16 | (header[30] & 0xff) << 8 | header[31] & 0xff;
        long expected = pages * (pageBytes == 1 ? 65536 : pageBytes);
        if (length < expected && !Files.exists(wal(file))) {
            throw new StoreException("session file " + file + " is cut short: " + length + " of " + expected
                    + " bytes are there; take a copy of it from elsewhere");
        }
    }

    private static void checkPragmas(Path file, Connection connection) throws SQLException {
        long application = pragma(connection, "application_id");
        if (application != Sqlite.APPLICATION_ID) {
            throw new StoreException("file " + file + " is another program's SQLite file, not a session");
        }
        long schema = pragma(connection, "user_version");
        if (schema > Sqlite.SCHEMA) {
            throw new StoreException("session file " + file + " was written by a newer version (schema " + schema
                    + "; this one reads up to " + Sqlite.SCHEMA + "); open it with the newer program");
        }
    }

    static long pragma(Connection connection, String name) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("PRAGMA " + name)) {
            return rows.getLong(1);
        }
    }
}
