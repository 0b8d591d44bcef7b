package railwitness.drivers.line;

import java.time.Duration;

/**
 * One instrument's wire. {@link #ask} and {@link #send} are for one thread at a time; {@link #cutIn} may come from any
 * thread at any moment and waits for nothing.
 */
public interface Line extends AutoCloseable {
    /** Which port this is, for messages. */
    String port();

    /** Sends one message (terminator added) without waiting for anything to come back. */
    void send(String message);

    /**
     * Sends one message and returns its reply without the terminator.
     *
     * @param deadline from now; the call ends then at the latest
     * @throws LineException with what was sent and what came back, when the deadline passes, the port is gone, or
     *     {@link #cutIn} came between
     */
    String ask(String message, Duration deadline);

    /** Like {@link #ask} for a definite-length block; returns its content. */
    byte[] askBlock(String message, Duration deadline);

    /**
     * Puts these bytes on the wire at once, whatever exchange is under way; a reply in flight is given up. The bytes
     * bring their own terminators. Never throws; false when the port is known to be gone.
     */
    boolean cutIn(byte[] bytes);

    /**
     * Lets go of the port and opens it anew, where the line can; from the thread that asks and sends. What is under way
     * is given up.
     *
     * @throws LineException when the port is not there
     */
    default void reopen() {
        throw new LineException(
                LineException.Trouble.NO_SUCH_PORT, port() + ": this line cannot be opened again", "", "");
    }

    /** Closes after what was sent has left. */
    @Override
    void close();
}
