package railwitness.logger.ui.screen.widgets;

import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JScrollPane;

/** A view that scrolls up and down, and sideways where numbers ask for more than its place; without a box round it. */
public final class Scroll {
    private Scroll() {}

    public static JScrollPane of(JComponent content) {
        JScrollPane pane = new JScrollPane(
                content, JScrollPane.VERTICAL_SCROLLBAR_AS_NEEDED, JScrollPane.HORIZONTAL_SCROLLBAR_AS_NEEDED);
        pane.setBorder(BorderFactory.createEmptyBorder());
        pane.setOpaque(false);
        pane.getViewport().setOpaque(false);
        pane.getVerticalScrollBar().setUnitIncrement(24);
        pane.getVerticalScrollBar().setFocusable(false);
        pane.getHorizontalScrollBar().setFocusable(false);
        return pane;
    }
}
