package railwitness.logger.ui.screen.window;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.LayoutManager;
import java.util.List;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.widgets.Label;

/** State and figures in one line where they have their place, what not to touch below; the button always at the right. */
final class BandLayout implements LayoutManager {
    private static final int LEAST = 72;
    private static final int CRAMPED = 520;
    private static final int INSET = 20;
    private static final int AIR = 10;
    private static final int GAP = 28;
    private static final int BUTTON_WIDTH = 200;
    private static final int BUTTON_HEIGHT = 54;

    private final List<Label> figures;
    private final List<Label> below;
    private final Component button;

    /**
     * @param figures one beside the other
     * @param below one below the other
     */
    BandLayout(List<Label> figures, List<Label> below, Component button) {
        this.figures = List.copyOf(figures);
        this.below = List.copyOf(below);
        this.button = button;
    }

    @Override
    public void addLayoutComponent(String name, Component component) {
        // all are known from the start
    }

    @Override
    public void removeLayoutComponent(Component component) {
        // none ever goes
    }

    @Override
    public Dimension preferredLayoutSize(Container parent) {
        return new Dimension(Look.px(400), height(parent));
    }

    @Override
    public Dimension minimumLayoutSize(Container parent) {
        return new Dimension(Look.px(200), height(parent));
    }

    private static int width(Container parent) {
        Container around = parent.getParent();
        return around != null && around.getWidth() > 0 ? around.getWidth() : parent.getWidth();
    }

    private int inside(Container parent) {
        return Math.max(Look.px(80), width(parent) - Look.px(3 * INSET + BUTTON_WIDTH));
    }

    private int height(Container parent) {
        boolean low = parent.getParent() != null && parent.getParent().getHeight() < Look.px(CRAMPED);
        return Math.max(Look.px(low ? 0 : LEAST), placed(parent, false, 0) + 2 * Look.px(low ? AIR / 2 : AIR));
    }

    /** Places everything, or only finds out how high it is. */
    private int placed(Container parent, boolean really, int top) {
        int inside = inside(parent);
        int x = 0;
        int y = top;
        int high = 0;
        for (Label one : figures) {
            if (!one.isVisible()) {
                continue;
            }
            int wide = Math.min(one.naturalWidth(), inside);
            if (x > 0 && x + wide > inside) {
                x = 0;
                y += high;
                high = 0;
            }
            high = Math.max(high, one.heightAt(wide));
            if (really) {
                one.setBounds(Look.px(INSET) + x, y, wide, one.heightAt(wide));
            }
            x += wide + Look.px(GAP);
        }
        y += high;
        for (Label one : below) {
            if (one.isVisible()) {
                int tall = one.heightAt(inside);
                if (really) {
                    one.setBounds(Look.px(INSET), y, inside, tall);
                }
                y += tall;
            }
        }
        return y - top;
    }

    @Override
    public void layoutContainer(Container parent) {
        int tall = placed(parent, false, 0);
        placed(parent, true, Math.max(0, (parent.getHeight() - tall) / 2));
        int wide = Look.px(BUTTON_WIDTH);
        int high = Math.min(parent.getHeight() - Look.px(AIR), Math.max(Look.px(BUTTON_HEIGHT), tall));
        high = Math.min(high, Look.px(2 * BUTTON_HEIGHT));
        button.setBounds(parent.getWidth() - wide - Look.px(INSET), (parent.getHeight() - high) / 2, wide, high);
    }
}
