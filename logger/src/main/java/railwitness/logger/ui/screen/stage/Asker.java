package railwitness.logger.ui.screen.stage;

/** Puts a question to the person; in the window it stands where the bottom line is, and covers nothing that matters. */
public interface Asker {
    /** Behind those that wait already; another sentence under the same key takes the place of the one before. */
    void ask(Question question);

    /** Before all others: a hand must switch something off. */
    void askFirst(Question question);

    /** Takes the question of this key away again, if it still stands there. */
    void withdraw(String key);
}
