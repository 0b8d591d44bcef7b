package railwitness.logger.recording.store;

import java.nio.file.Path;

/**
 * Whether a session that is read is as it was recorded. Its chain is worked out in passing where that takes less than
 * about a second, which is seen from its size. Of a longer one it is worked out for a second, from its beginning, where
 * head and sheets stand; the rest somebody has to ask for.
 *
 * @param kind what is known
 * @param words one line; empty for an intact one
 */
public record ChainState(Kind kind, String words) {
    /** Less than a second's work: 4 million readings of 6.6 bytes a second were measured ({@code logger/README.md}). */
    private static final long MOST_BYTES_IN_PASSING = 20_000_000;

    private static final long MOST_NANOS = 1_000_000_000L;

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
        boolean isLong = !whole && session.toFile().length() > MOST_BYTES_IN_PASSING;
        Verification verification = isLong ? Verifier.glance(session, MOST_NANOS) : Verification.of(session);
        if (!verification.isIntact()) {
            return new ChainState(Kind.BROKEN, "broken chain: the session is " + verification.words());
        }
        return isLong
                ? new ChainState(
                        Kind.NOT_WORKED_OUT,
                        "the session is long: its chain was worked out for a second only and not to its end, so it is"
                                + " not known whether it is as it was recorded")
                : new ChainState(Kind.INTACT, "");
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
