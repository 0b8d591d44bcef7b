package railwitness.logger.ui.screen.form;

import java.util.List;

/** One or several keys side by side, with a place for what is wrong with them. */
interface FormLine {
    List<FieldEditor> editors();

    /** @param words of something that may be a slip; empty for nothing */
    default void asked(FieldEditor of, String words) {
        // a line of several keys says only what is wrong
    }

    /** @param words empty when nothing is wrong with this one */
    void fault(FieldEditor of, String words);
}
