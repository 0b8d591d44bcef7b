package railwitness.logger.recording.store;

import java.nio.file.Path;

/**
 * Whether a session that is read is as it was recorded. Its chain is worked out in passing where that takes less than
 * about a second, which is seen from its size; else somebody has to ask for it.
 *
 * @param kind what is known
 * @param words one line; empty for an intact one
 */
public record ChainState(Kind kind, String words) {
    /** Half a second's work on an ordinary computer. */
    private static final long MOST_BYTES_IN_PASSING = 6_000_000;

    /** What is known of a chain. */
    public enum Kind {
        INTACT("intact"),
        BROKEN("broken"),
        NOT_WORKED_OUT("not worked out");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** The word in files. */
        public String word() {
            return word;
        }
    }

    /**
     * Looks at a session.
     *
     * @param whole work the chain out however long it takes
     * @throws StoreException when the file cannot be opened as a session
     */
    public static ChainState of(Path session, boolean whole) {
        if (!whole && session.toFile().length() > MOST_BYTES_IN_PASSING) {
            return new ChainState(
                    Kind.NOT_WORKED_OUT,
                    "the session is long: its chain was not worked out, so it is not known whether it is as it was"
                            + " recorded");
        }
        Verification verification = Verification.of(session);
        return verification.isIntact()
                ? new ChainState(Kind.INTACT, "")
                : new ChainState(Kind.BROKEN, "broken chain: the session is " + verification.words());
    }

    public boolean isBroken() {
        return kind == Kind.BROKEN;
    }

    /** False while nobody has worked it out. */
    public boolean isKnown() {
        return kind != Kind.NOT_WORKED_OUT;
    }

    /** Throws StoreException where the chain is broken. */
    public void refuseBroken(Path session) {
        if (isBroken()) {
            throw new StoreException(session + ": " + words);
        }
    }
}
