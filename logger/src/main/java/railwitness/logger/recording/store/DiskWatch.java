package railwitness.logger.recording.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Objects;
import java.util.Optional;
import java.util.function.LongSupplier;

/** Looks after the session's file while it is written: is it still there, and does the disk still have room. */
final class DiskWatch {
    private static final double LOOK_SECONDS = 10;

    private final Path file;
    private final Object fileKey;
    private final LongSupplier freeBytes;
    private final DiskForecast forecast = new DiskForecast();
    private double lookedAtSeconds = Double.NEGATIVE_INFINITY;
    private boolean gone;

    DiskWatch(Path file, LongSupplier freeBytes) throws IOException {
        this.file = file;
        this.fileKey = keyOf(file);
        this.freeBytes = freeBytes;
    }

    /** Room left on the disk of a file, bytes; as good as endless when the system does not say. */
    static long freeBytesBeside(Path file) {
        try {
            return Files.getFileStore(file.toAbsolutePath().getParent()).getUsableSpace();
        } catch (IOException e) {
            return Long.MAX_VALUE;
        }
    }

    /** True when the file was found moved or deleted for the first time. */
    boolean justLost() {
        if (gone) {
            return false;
        }
        try {
            gone = !Objects.equals(fileKey, keyOf(file));
        } catch (IOException e) {
            gone = true;
        }
        return gone;
    }

    boolean isLost() {
        return gone;
    }

    /** What to say about the room on the disk, if anything. */
    Optional<String> roomWarning(double seconds) {
        if (seconds - lookedAtSeconds < LOOK_SECONDS) {
            return Optional.empty();
        }
        lookedAtSeconds = seconds;
        return forecast.look(seconds, sessionBytes(), freeBytes.getAsLong());
    }

    private long sessionBytes() {
        return file.toFile().length()
                + file.resolveSibling(file.getFileName() + "-wal").toFile().length();
    }

    private static Object keyOf(Path file) throws IOException {
        BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
        return attributes.fileKey() == null ? attributes.creationTime() : attributes.fileKey();
    }
}
