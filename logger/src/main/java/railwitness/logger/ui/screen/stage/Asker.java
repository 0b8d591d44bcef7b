package railwitness.logger.ui.screen.stage;

/** Puts a question to the person; in the window it stands where the bottom line is, and covers nothing that matters. */
public interface Asker {
    void ask(Question question);

    /** Takes the question of this key away again, if it still stands there. */
    void withdraw(String key);
}
