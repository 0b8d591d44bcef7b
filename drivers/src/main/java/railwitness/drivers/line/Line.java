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

    /** Closes after what was sent has left. */
    @Override
    void close();
}
