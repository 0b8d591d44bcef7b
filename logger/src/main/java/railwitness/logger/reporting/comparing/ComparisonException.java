package railwitness.logger.reporting.comparing;

/** These sessions cannot be compared. The message is one line that says why and what to do. */
public final class ComparisonException extends RuntimeException {
    public ComparisonException(String message) {
        super(message);
    }
}
