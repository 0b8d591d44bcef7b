package railwitness.logger.ui.screen.widgets;

import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.LayoutManager;
import java.awt.Rectangle;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import javax.swing.JPanel;
import javax.swing.JViewport;
import javax.swing.Scrollable;
import railwitness.logger.ui.screen.theme.Look;

/** A column of text as wide as its place, that scrolls up and down; sideways only where its numbers ask for more. */
public class Readable extends JPanel implements Scrollable {
    public Readable(LayoutManager layout) {
        super(layout);
        setOpaque(false);
    }

    /**
     * Lets the keyboard reach it although nothing in it takes keys, so that arrow and page keys scroll it.
     *
     * @param words read aloud
     */
    public final void reachable(String words) {
        setFocusable(true);
        getAccessibleContext().setAccessibleName(words);
        addFocusListener(new FocusListener() {
            @Override
            public void focusGained(FocusEvent e) {
                repaint();
            }

            @Override
            public void focusLost(FocusEvent e) {
                repaint();
            }
        });
    }

    /** The outline of the focus stands still while what it is about scrolls. */
    @Override
    public void addNotify() {
        super.addNotify();
        if (isFocusable() && getParent() instanceof JViewport view) {
            view.setScrollMode(JViewport.SIMPLE_SCROLL_MODE);
        }
    }

    @Override
    protected void paintChildren(Graphics graphics) {
        super.paintChildren(graphics);
        if (isFocusOwner()) {
            Rectangle seen = getVisibleRect();
            Graphics2D g = (Graphics2D) graphics.create();
            g.setColor(Look.palette().ink());
            g.setStroke(new BasicStroke(Look.px(2)));
            g.drawRoundRect(seen.x + 1, seen.y + 1, seen.width - 3, seen.height - 3, Look.px(6), Look.px(6));
            g.dispose();
        }
    }

    /** Where its place is narrower than its numbers, no wider than these: text wraps in what there is. */
    @Override
    public Dimension getPreferredSize() {
        Dimension wanted = super.getPreferredSize();
        return isPreferredSizeSet() || getScrollableTracksViewportWidth()
                ? wanted
                : new Dimension(getMinimumSize().width, wanted.height);
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
        return getPreferredSize();
    }

    @Override
    public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
        return Look.px(31);
    }

    @Override
    public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
        return visible.height - Look.px(31);
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
        return getParent() == null || getParent().getWidth() >= getMinimumSize().width;
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return false;
    }
}
