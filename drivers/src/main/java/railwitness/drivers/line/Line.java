package railwitness.drivers.line;

import java.time.Duration;
import java.util.List;

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
     * Learns by what questions this instrument can be brought back in step after a silence; to be called once, when it
     * has answered to {@code *IDN?} and before its error queue is emptied, as it may not know them.
     *
     * @param identity its answer
     */
    default void getToKnow(String identity, Duration deadline) {
        // a line that keeps every answer with its question needs to know nothing
    }

    /** The last reply cannot belong to its question: the next exchange first brings the line back in step. */
    default void doubt() {
        // a line that keeps every answer with its question is never in doubt
    }

    /** What came too late or unasked since this was last asked, oldest first; it was thrown away. */
    default List<String> thrownAway() {
        return List.of();
    }

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

    /** Other ports on which the same instrument may have come back, where its own stays away; it must then be asked who it is. */
    default List<String> elsewhere() {
        return List.of();
    }

    /**
     * Like {@link #reopen}, on another port, which is this line's from then on.
     *
     * @throws LineException when it is not there or in use; the line then keeps the port it had
     */
    default void reopenAt(String otherPort) {
        throw new LineException(
                LineException.Trouble.NO_SUCH_PORT, port() + ": this line cannot be opened on another port", "", "");
    }

    /** What answers on the other port is not the instrument: that port is let go, and the line is the own port's again. */
    default void backTo(String ownPort) {
        // a line that never was elsewhere is there already
    }

    /** Closes after what was sent has left. */
    @Override
    void close();
}
