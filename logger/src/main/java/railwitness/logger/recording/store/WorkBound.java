package railwitness.logger.recording.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.sqlite.ProgressHandler;

/**
 * Bounds what one question to a session may cost by the size of its file, so that tables that lead in circles come to an
 * end: no honest question takes more than a few steps of SQLite's machine for each byte there is.
 */
final class WorkBound extends ProgressHandler {
    private static final int LOOK_STEPS = 50_000;
    private static final long FREE_STEPS = 3_000_000;
    private static final long STEPS_PER_BYTE = 12;

    private final Path file;
    private long steps;
    private long most = FREE_STEPS;

    private WorkBound(Path file) {
        this.file = file;
    }

    /** Watches all questions of the connection. */
    static WorkBound on(Connection connection, Path file) throws SQLException {
        WorkBound bound = new WorkBound(file);
        setHandler(connection, LOOK_STEPS, bound);
        return bound;
    }

    /** A new question begins. */
    void begin() {
        steps = 0;
    }

    /** True when the last question was broken off. */
    boolean isExceeded() {
        return steps > most;
    }

    @Override
    protected int progress() {
        steps += LOOK_STEPS;
        if (steps > most) {
            most = FREE_STEPS + STEPS_PER_BYTE * (length(file) + length(OpenedFile.wal(file)));
        }
        return isExceeded() ? 1 : 0;
    }

    private static long length(Path path) {
        return path.toFile().length();
    }
}
