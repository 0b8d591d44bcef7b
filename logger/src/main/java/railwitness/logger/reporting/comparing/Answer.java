package railwitness.logger.reporting.comparing;

/** Whether a difference says that something changed. */
public enum Answer {
    /** It lies beyond its own expanded uncertainty. */
    REAL("real change"),
    /** It lies within it: the two may be alike. */
    NOT_SHOWN("no change shown"),
    /** The accuracy behind one of the two is not stated. */
    NOT_KNOWN("not known: accuracy not stated");

    private final String words;

    Answer(String words) {
        this.words = words;
    }

    /** As printed and as written in JSON. */
    public String words() {
        return words;
    }
}
