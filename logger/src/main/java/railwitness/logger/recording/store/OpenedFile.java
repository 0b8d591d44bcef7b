package railwitness.logger.recording.store;

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

/**
 * A session opened for reading wherever it lies, or words why it is none.
 *
 * @param bound what one question may cost; to be told when each begins
 */
record OpenedFile(Connection connection, WorkBound bound) {
    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final int HEADER_BYTES = 100;

    static OpenedFile open(Path file) {
        checkHeader(file);
        try {
            OpenedFile opened = connect(file);
            try {
                checkPragmas(file, opened.connection);
                SchemaCheck.refuseOthers(file, opened.connection);
                return opened;
            } catch (SQLException | RuntimeException | Error e) {
                Sqlite.closeQuietly(opened.connection);
                throw e;
            }
        } catch (SQLException e) {
            throw damaged(file, e);
        } catch (IOException e) {
            throw new StoreException("session file " + file + " cannot be read: " + e.getMessage(), e);
        }
    }

    static StoreException damaged(Path file, SQLException e) {
        String why = Sqlite.isInterrupted(e)
                ? "its tables lead in circles: there is more in them than its size bears"
                : String.valueOf(e.getMessage());
        return new StoreException(
                "session file " + file + " is damaged or cannot be read (" + why
                        + "); take a copy of it from elsewhere",
                e);
    }

    private static OpenedFile connect(Path file) throws SQLException, IOException {
        try {
            return connectInPlace(file);
        } catch (SQLException e) {
            if (!Files.exists(wal(file)) || !Sqlite.isNotOpenable(e)) {
                throw e;
            }
            return connectInPlace(copyWithLog(file));
        }
    }

    private static OpenedFile connectInPlace(Path file) throws SQLException {
        Connection connection = Sqlite.openForReading(file);
        try (Statement statement = connection.createStatement()) {
            WorkBound bound = WorkBound.on(connection, file);
            statement.execute("PRAGMA busy_timeout = 10000");
            statement.execute("PRAGMA trusted_schema = OFF");
            statement.execute("PRAGMA cell_size_check = ON");
            statement.executeQuery("SELECT count(*) FROM sqlite_master").close();
            return new OpenedFile(connection, bound);
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

    static Path wal(Path file) {
        return file.resolveSibling(file.getFileName() + "-wal");
    }

    private static void checkHeader(Path file) {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new StoreException(file + " is no file but "
                    + (Files.isDirectory(file) ? "a folder" : "a device or a pipe") + "; name a session file");
        }
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
        if (schema < 1) {
            throw new StoreException("session file " + file + " is of the schema " + schema
                    + ", which there never was; take a copy of it from elsewhere");
        }
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
