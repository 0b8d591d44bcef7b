package railwitness.logger.recording.store;

import java.util.Locale;

/** How far a session came. */
public enum SessionState {
    /** A recorder holds the file right now. */
    RUNNING,
    /** No recorder holds it and it was never brought to an end: power cut, crash, kill. */
    INTERRUPTED,
    /** The plan was worked through. */
    COMPLETE,
    /** A person ended it. */
    STOPPED,
    /** The interlock ended it. */
    TRIPPED;

    /** The word in files: running, interrupted, complete, stopped, tripped. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** True for the three in which a recorder can leave a file on purpose. */
    public boolean isEnding() {
        return this == COMPLETE || this == STOPPED || this == TRIPPED;
    }

    static SessionState of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
