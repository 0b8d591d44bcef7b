package railwitness.drivers.line;

import java.time.Duration;
import java.util.Locale;

/** A wire or instrument did not do what was asked. The message tells the person what to do next. */
public final class LineException extends RuntimeException {
    private final Trouble trouble;
    private final String sent;
    private final String received;

    /** What went wrong, by kind. */
    public enum Trouble {
        NO_SUCH_PORT,
        IN_USE,
        UNPLUGGED,
        NO_ANSWER,
        GARBLED,
        REFUSED,
        CUT_SHORT,
        WRONG_INSTRUMENT
    }

    public LineException(Trouble trouble, String message, String sent, String received) {
        super(message);
        this.trouble = trouble;
        this.sent = sent;
        this.received = received;
    }

    /** Nothing, or nothing complete, came in time. */
    public static LineException noAnswer(String port, String sent, String received, Duration deadline) {
        String message = port + ": no answer to '" + sent + "' within " + seconds(deadline)
                + "; is the instrument on, the cable in, and the port set as on the bench sheet?";
        return new LineException(Trouble.NO_ANSWER, message, sent, received);
    }

    /** Something came, but not what was asked for. */
    public static LineException garbled(String port, String sent, String received, String expected) {
        String message = port + ": '" + sent + "' was answered by '" + received + "', which is not " + expected
                + "; are baud rate and parity right?";
        return new LineException(Trouble.GARBLED, message, sent, received);
    }

    /** The port has gone. */
    public static LineException unplugged(String port, String sent) {
        return new LineException(
                Trouble.UNPLUGGED, port + ": the port has gone; plug the instrument in and start again", sent, "");
    }

    /** The line was closed before or meanwhile. */
    public static LineException closed(String port, String sent) {
        return new LineException(Trouble.CUT_SHORT, port + ": the line is closed", sent, "");
    }

    /** Bytes were put on the wire over the head of this exchange. */
    public static LineException cutShort(String port, String sent, String received) {
        String message = port + ": '" + sent + "' was given up because something more urgent was sent";
        return new LineException(Trouble.CUT_SHORT, message, sent, received);
    }

    /** The same trouble, its message led by the name of the instrument. */
    public LineException of(String instrument) {
        LineException named = new LineException(trouble, instrument + " on " + getMessage(), sent, received);
        named.initCause(this);
        return named;
    }

    private static String seconds(Duration time) {
        return String.format(Locale.ROOT, "%.3g s", time.toNanos() / 1e9);
    }

    public Trouble trouble() {
        return trouble;
    }

    /** What was sent, or an empty text. */
    public String sent() {
        return sent;
    }

    /** What had come back by then, or an empty text. */
    public String received() {
        return received;
    }
}
