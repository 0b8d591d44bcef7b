package railwitness.drivers.line;

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
