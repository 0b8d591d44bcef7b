package railwitness.logger.reporting.exporting;

/** A session cannot be written out there. The message is one line that says why and what to do. */
public final class ExportException extends RuntimeException {
    public ExportException(String message) {
        super(message);
    }
}
