package railwitness.logger.recording.importing;

/** A table cannot be taken. The message is one line with file, row and column, and what to do. */
public final class ImportException extends RuntimeException {
    public ImportException(String message) {
        super(message);
    }
}
