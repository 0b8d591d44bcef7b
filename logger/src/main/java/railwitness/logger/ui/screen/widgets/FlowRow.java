package railwitness.logger.ui.screen.widgets;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.LayoutManager;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import railwitness.logger.ui.screen.theme.Look;

/** Things one beside the other, going on in a further line where the place is narrow; none is made narrower than it is. */
public final class FlowRow extends JPanel {
    private static final int LEAST_HEIGHT = 24;

    /** @param gap between two, in pixels at 100 % */
    public FlowRow(int gap, Component... all) {
        super(null);
        setLayout(new Flow(gap));
        setOpaque(false);
        for (Component one : all) {
            add(one);
        }
    }

    /** A narrower row may be a higher one. */
    @Override
    public void setBounds(int x, int y, int width, int height) {
        boolean other = width != getWidth();
        super.setBounds(x, y, width, height);
        if (other && getPreferredSize().height != height) {
            SwingUtilities.invokeLater(this::revalidate);
        }
    }

    private record Flow(int gap) implements LayoutManager {
        @Override
        public void addLayoutComponent(String name, Component component) {
            // each is asked when it is placed
        }

        @Override
        public void removeLayoutComponent(Component component) {
            // nothing is kept of it
        }

        @Override
        public Dimension preferredLayoutSize(Container parent) {
            int wide = 0;
            for (Component one : parent.getComponents()) {
                wide += one.isVisible() ? natural(one).width + Look.px(gap) : 0;
            }
            int inside = parent.getWidth() > 0 ? parent.getWidth() : wide;
            return new Dimension(Math.max(0, wide - Look.px(gap)), place(parent, inside, false));
        }

        @Override
        public Dimension minimumLayoutSize(Container parent) {
            return new Dimension(Look.px(40), preferredLayoutSize(parent).height);
        }

        @Override
        public void layoutContainer(Container parent) {
            place(parent, parent.getWidth(), true);
        }

        private static Dimension natural(Component one) {
            return one instanceof Label label
                    ? new Dimension(label.naturalWidth(), label.heightAt(label.naturalWidth()))
                    : one.getPreferredSize();
        }

        private static int high(Component one, int wide) {
            int high = one instanceof Label label ? label.heightAt(wide) : one.getPreferredSize().height;
            return Math.max(high, one instanceof Label ? 0 : Look.px(LEAST_HEIGHT));
        }

        private int place(Container parent, int inside, boolean really) {
            int x = 0;
            int y = 0;
            int line = 0;
            for (Component one : parent.getComponents()) {
                if (!one.isVisible()) {
                    continue;
                }
                int wide = Math.min(natural(one).width, Math.max(inside, 1));
                if (x > 0 && x + wide > inside) {
                    x = 0;
                    y += line + Look.px(4);
                    line = 0;
                }
                int high = high(one, wide);
                if (really) {
                    one.setBounds(x, y, wide, high);
                }
                line = Math.max(line, high);
                x += wide + Look.px(gap);
            }
            return y + line;
        }
    }
}
