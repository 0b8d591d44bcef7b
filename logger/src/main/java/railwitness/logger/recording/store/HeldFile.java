package railwitness.logger.recording.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * The empty file {@code <session>-held} beside a session that is being recorded. Its lock says that a recorder is alive;
 * the operating system takes the lock away when the recorder dies. The lock is SQLite's own, because Java's would be
 * lost as soon as a reader in the same process closed the file.
 */
final class HeldFile implements AutoCloseable {
    private final Path path;
    private final Connection lock;

    private HeldFile(Path path, Connection lock) {
        this.path = path;
        this.lock = lock;
    }

    private static Path beside(Path session) {
        return session.resolveSibling(session.getFileName() + "-held");
    }

    /** Creates and locks the file; throws StoreException when another recorder has it or no lock can be had. */
    static HeldFile take(Path session) {
        Path path = beside(session);
        Connection connection = null;
        try {
            connection = Sqlite.openForWriting(path);
            try (Statement statement = connection.createStatement()) {
                statement.execute("PRAGMA busy_timeout = 0");
                statement.execute("PRAGMA journal_mode = MEMORY");
                statement.execute("BEGIN EXCLUSIVE");
            }
            return new HeldFile(path, connection);
        } catch (SQLException e) {
            Sqlite.closeQuietly(connection);
            throw new StoreException(
                    Sqlite.isBusy(e)
                            ? "session file " + session
                                    + " is being recorded by another program right now; choose another file name"
                            : "session file " + session + " cannot be locked (" + e.getMessage()
                                    + "); record on a disk of this computer",
                    e);
        }
    }

    /** True when a living recorder holds the session. */
    static boolean isHeld(Path session) {
        Path path = beside(session);
        if (!Files.isRegularFile(path)) {
            return false;
        }
        try (Connection connection = Sqlite.openForReading(path);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA busy_timeout = 0");
            statement.executeQuery("SELECT count(*) FROM sqlite_master").close();
            return false;
        } catch (SQLException e) {
            return Sqlite.isBusy(e);
        }
    }

    @Override
    public void close() {
        try {
            Files.deleteIfExists(path);
        } catch (IOException e) {
            // Left behind it does no harm: without its lock it says nothing.
        }
        Sqlite.closeQuietly(lock);
    }
}
