package railwitness.logger.recording.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Brings sessions of older schemas up to the newest: copies the file first, then changes it in one transaction. There is
 * only one schema so far, so this program has no steps of its own yet.
 */
public final class Migration {
    private final SortedMap<Integer, List<String>> statementsFrom;
    private final int newest;

    /** The steps of this program. */
    public Migration() {
        this(new TreeMap<>(), Sqlite.SCHEMA);
    }

    /**
     * Other steps.
     *
     * @param statementsFrom for each schema but the newest the SQL that leads to the one after it
     */
    Migration(SortedMap<Integer, List<String>> statementsFrom, int newest) {
        this.statementsFrom = statementsFrom;
        this.newest = newest;
    }

    /**
     * Brings the file up to the newest schema.
     *
     * @return the copy that was made first, to be told to the user; empty when the file is of the newest schema already
     * @throws StoreException when it is no session, is being recorded, is of a newer schema, or the copy cannot be made
     */
    public Optional<Path> bringUp(Path file) {
        if (HeldFile.isHeld(file)) {
            throw new StoreException("session file " + file + " is being recorded; wait until it has ended");
        }
        int schema = schemaOf(file);
        if (schema == newest) {
            return Optional.empty();
        }
        Path copy = copyOf(file, schema);
        try (Connection connection = Sqlite.openForWriting(file);
                Statement statement = connection.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            for (int from = schema; from < newest; from++) {
                for (String sql : statementsFrom.get(from)) {
                    statement.execute(sql);
                }
            }
            statement.execute("PRAGMA user_version = " + newest);
            statement.execute("COMMIT");
            return Optional.of(copy);
        } catch (SQLException e) {
            throw new StoreException(
                    "session file " + file + " could not be brought up to schema " + newest + " (" + e.getMessage()
                            + "); it is unchanged, and a copy of it is " + copy,
                    e);
        }
    }

    private static int schemaOf(Path file) {
        try (Connection connection = OpenedFile.open(file).connection()) {
            return (int) OpenedFile.pragma(connection, "user_version");
        } catch (SQLException e) {
            throw OpenedFile.damaged(file, e);
        }
    }

    /** A copy through SQLite, so that a log left by an interruption is in it too. */
    private static Path copyOf(Path file, int schema) {
        Path copy = file.resolveSibling("schema-" + schema + "-" + file.getFileName());
        if (Files.exists(copy)) {
            throw new StoreException(copy + " is already there; move it away so that a copy can be made first");
        }
        try (Connection connection = Sqlite.openForReading(file);
                var vacuum = connection.prepareStatement("VACUUM INTO ?")) {
            vacuum.setString(1, copy.toString());
            vacuum.execute();
            return copy;
        } catch (SQLException e) {
            deleteQuietly(copy);
            throw new StoreException(
                    "session file " + file + " cannot be copied (" + e.getMessage() + "); make room beside it", e);
        }
    }

    private static void deleteQuietly(Path copy) {
        try {
            Files.deleteIfExists(copy);
        } catch (IOException e) {
            // What is left of it is smaller than a session and refused as one.
        }
    }
}
