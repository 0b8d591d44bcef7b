package railwitness.logger.recording.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.SplittableRandom;

/**
 * Room on the disk set aside while a session is recorded: {@code <session>-reserve}. When the disk is full it is given
 * back, so that the last readings and the safe ending still fit.
 */
final class ReserveFile implements AutoCloseable {
    /** Room set aside, bytes: the readings of an ending and the folding in of the write-ahead log. */
    static final int BYTES = 8 << 20;

    private final Path path;

    private ReserveFile(Path path) {
        this.path = path;
    }

    /** Sets the room aside; throws StoreException when the disk has not even that much. */
    static ReserveFile beside(Path session) {
        Path path = session.resolveSibling(session.getFileName() + "-reserve");
        try {
            // Without a pattern, so that a file system that compresses cannot save it.
            byte[] bytes = new byte[BYTES];
            new SplittableRandom(1).nextBytes(bytes);
            Files.write(path, bytes, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            return new ReserveFile(path);
        } catch (IOException e) {
            deleteQuietly(path);
            throw new StoreException(
                    "the disk of " + session + " has less than " + (BYTES >> 20)
                            + " MB left; make room on it or record elsewhere",
                    new UncheckedIOException(e));
        }
    }

    /** Gives the room back; false when it was given back before. */
    boolean giveBack() {
        return deleteQuietly(path);
    }

    private static boolean deleteQuietly(Path path) {
        try {
            return Files.deleteIfExists(path);
        } catch (IOException e) {
            return false;
        }
    }

    @Override
    public void close() {
        deleteQuietly(path);
    }
}
