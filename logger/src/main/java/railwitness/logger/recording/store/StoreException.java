package railwitness.logger.recording.store;

/** A session file cannot be written or read. The message is one line that says what happened and what to do next. */
public final class StoreException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public StoreException(String message) {
        super(message);
    }

    public StoreException(String message, Throwable cause) {
        super(message, cause);
    }
}
