package railwitness.logger.ui.screen.widgets;

import java.awt.BorderLayout;
import javax.swing.JComponent;

/** Fills its view; where it would be lower than it can be, it keeps its height and scrolls. */
public final class Filling extends Readable {
    public Filling(JComponent content) {
        super(new BorderLayout());
        add(content, BorderLayout.CENTER);
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return getParent() == null || getParent().getHeight() >= getMinimumSize().height;
    }
}
