package railwitness.logger.ui.screen.widgets;

import java.awt.event.ActionEvent;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.KeyStroke;

/** Keys as they are called on the keyboard, and what they do. */
public final class Keys {
    private Keys() {}

    /** Such as "Ctrl Enter" for {@code control ENTER}. */
    public static String words(String stroke) {
        StringBuilder words = new StringBuilder();
        for (String part : stroke.split(" ")) {
            words.append(words.isEmpty() ? "" : " ").append(Words.orElse("key." + part, part));
        }
        return words.toString();
    }

    /** A key that works while this has the focus. */
    public static void on(JComponent place, String stroke, Runnable done) {
        bind(place, JComponent.WHEN_FOCUSED, stroke, done);
    }

    /** A key that works wherever the focus is inside of this. */
    public static void within(JComponent place, String stroke, Runnable done) {
        bind(place, JComponent.WHEN_ANCESTOR_OF_FOCUSED_COMPONENT, stroke, done);
    }

    private static void bind(JComponent place, int when, String stroke, Runnable done) {
        place.getInputMap(when).put(KeyStroke.getKeyStroke(stroke), stroke);
        place.getActionMap().put(stroke, new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent e) {
                done.run();
            }
        });
    }
}
