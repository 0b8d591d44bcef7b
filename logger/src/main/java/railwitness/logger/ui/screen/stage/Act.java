package railwitness.logger.ui.screen.stage;

/**
 * Something the person can do now.
 *
 * @param key word under which its name stands in the bundle; two acts of one key are the same act
 * @param label as it is written on its button
 * @param stroke its key, such as {@code control N}
 * @param usual the one that is done when nothing speaks against it
 */
public record Act(String key, String label, String stroke, boolean usual, Runnable done) {
    /** The same act, whatever it runs. */
    public boolean sameAs(Act other) {
        return key.equals(other.key) && label.equals(other.label) && usual == other.usual;
    }
}
