package railwitness.logger.ui.screen.window;

import java.awt.Component;
import java.awt.Container;
import javax.swing.JComponent;

/** The first thing of a stage that takes the keyboard. */
final class FirstFocus {
    private FirstFocus() {}

    static void in(JComponent face) {
        Container root = face.getFocusCycleRootAncestor();
        if (root == null) {
            return;
        }
        Component first = search(face);
        if (first != null) {
            first.requestFocusInWindow();
        }
    }

    private static Component search(Container in) {
        for (Component one : in.getComponents()) {
            boolean takes = one.isVisible() && one.isEnabled() && one.isFocusable();
            if (takes
                    && (one instanceof railwitness.logger.ui.screen.widgets.RuledSheet
                            || one instanceof javax.swing.AbstractButton
                            || one instanceof javax.swing.text.JTextComponent
                            || one instanceof javax.swing.JComboBox)) {
                return one;
            }
            if (one instanceof Container inner && one.isVisible()) {
                Component found = search(inner);
                if (found != null) {
                    return found;
                }
            }
        }
        return null;
    }
}
