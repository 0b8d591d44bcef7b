package railwitness.logger.ui.screen.form;

import java.util.List;

/** One or several keys side by side, with a place for what is wrong with them. */
interface FormLine {
    List<FieldEditor> editors();

    /** @param words empty when nothing is wrong with this one */
    void fault(FieldEditor of, String words);
}
