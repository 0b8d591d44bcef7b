package railwitness.safety.guardian;

/** The guardian could not be started; without it there is no power. The message says what to do. */
public final class GuardianException extends RuntimeException {
    public GuardianException(String message, Throwable cause) {
        super(message, cause);
    }
}
