package railwitness.logger.reporting.certificate;

/** A certificate cannot be made or read. The message is one line that says what to do. */
public final class CertificateException extends RuntimeException {
    public CertificateException(String message) {
        super(message);
    }

    CertificateException(String message, Throwable cause) {
        super(message, cause);
    }
}
