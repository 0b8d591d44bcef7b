package railwitness.logger.ui.screen.form;

import javax.swing.JButton;
import javax.swing.JComponent;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Keys;

/**
 * Something that can be done to a sheet, on a small button.
 *
 * @param name by which its button is found
 * @param stroke its key, such as {@code control O}; empty for none
 */
public record FormAct(String name, String label, String stroke, Runnable done) {
    public static FormAct of(String name, String label, Runnable done) {
        return new FormAct(name, label, "", done);
    }

    /** The same with a key. */
    public FormAct keyed(String wanted) {
        return new FormAct(name, label, wanted, done);
    }

    /** A new button for it. */
    public JButton button() {
        JButton button = new JButton(label + (stroke.isEmpty() ? "" : "   " + Keys.words(stroke)));
        button.setName(name);
        button.getAccessibleContext().setAccessibleName(label);
        button.setFont(Type.CAPTION.font());
        button.addActionListener(e -> done.run());
        return button;
    }

    /** Its key works wherever the focus is inside of this. */
    public void keyIn(JComponent place) {
        Keys.within(place, stroke, done);
    }
}
