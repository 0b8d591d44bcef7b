package railwitness.drivers.line;

import java.time.Duration;
import java.util.Locale;

/** A wire or instrument did not do what was asked. The message tells the person what to do next. */
public final class LineException extends RuntimeException {
    private static final String NOTHING_CAME = "; is the instrument on, the cable in, and the port set as on the"
            + " bench sheet? Where it is only slow, answer_within_s gives it longer; where it wants another end of a"
            + " message, terminator names it";
    private static final String HALF_CAME = ", which has no end yet: where it is slow, answer_within_s gives it longer;"
            + " where <CR> ends it, set terminator = \"CR\" on the bench sheet";

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
        String message = port + ": no answer to '" + Visible.text(sent) + "' within " + seconds(deadline)
                + (received.isEmpty() ? NOTHING_CAME : "; what came is '" + Visible.text(received) + "'" + HALF_CAME);
        return new LineException(Trouble.NO_ANSWER, message, sent, received);
    }

    /** Something came, but not what was asked for. */
    public static LineException garbled(String port, String sent, String received, String expected) {
        String message = port + ": '" + Visible.text(sent) + "' was answered by '" + Visible.text(received)
                + "', which is not " + expected + "; are baud rate and parity right?";
        return new LineException(Trouble.GARBLED, message, sent, received);
    }

    /** Something came of which it is not certain that it answers this question. */
    public static LineException outOfStep(String port, String sent, String received) {
        String message = port + ": after '" + Visible.text(sent) + "' more came than one answer ('"
                + Visible.text(received) + "'), so it is not known which is its own; nothing of it counts";
        return new LineException(Trouble.GARBLED, message, sent, received);
    }

    /** The instrument answered what followed the question in the same message, but not the question. */
    public static LineException passedOver(String port, String sent) {
        String message = port + ": '" + Visible.text(sent) + "' was passed over without an answer, as by an instrument"
                + " that does not know it";
        return new LineException(Trouble.NO_ANSWER, message, sent, "");
    }

    /** More came than any answer has, and no end to it. */
    public static LineException endless(String port, String sent, int bytes) {
        String message = port + ": after '" + Visible.text(sent) + "' more than " + bytes
                + " bytes came without an end; is baud rate or terminator another, or does something else talk on"
                + " this line?";
        return new LineException(Trouble.GARBLED, message, sent, "");
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
