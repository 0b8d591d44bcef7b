package railwitness.logger.ui.screen.window;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.LayoutManager;
import java.util.List;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.widgets.Label;

/**
 * What happens at the left, how far it is and what can be done at the right; where they have no place beside each other the
 * buttons go below, in as many rows as they need.
 */
final class FootLayout implements LayoutManager {
    private static final int LEAST = 84;
    private static final int INSET = 20;
    private static final int AIR = 8;
    private static final int GAP = 10;
    private static final int BUTTON = 36;
    private static final int LOW_BUTTON = 30;
    private static final int CRAMPED = 520;
    private static final double MOST = 0.34;
    private static final int PROGRESS_HEIGHT = 44;
    private static final int PROGRESS_WIDTH = 300;
    private static final int PROGRESS_LEAST = 180;
    private static final int WORDS_LEAST = 330;

    private final List<Label> words;
    private final Component progress;
    private final Container buttons;

    FootLayout(List<Label> words, Component progress, Container buttons) {
        this.words = List.copyOf(words);
        this.progress = progress;
        this.buttons = buttons;
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
        return new Dimension(Look.px(400), new Plan(width(parent), room(parent)).height());
    }

    @Override
    public Dimension minimumLayoutSize(Container parent) {
        return new Dimension(Look.px(200), new Plan(width(parent), room(parent)).height());
    }

    private static int width(Container parent) {
        Container around =
                parent.getParent() == null ? null : parent.getParent().getParent();
        int width = around != null && around.getWidth() > 0 ? around.getWidth() : parent.getWidth();
        return Math.max(Look.px(200), width);
    }

    private static int room(Container parent) {
        Container around =
                parent.getParent() == null ? null : parent.getParent().getParent();
        return around != null && around.getHeight() > 0 ? around.getHeight() : Integer.MAX_VALUE;
    }

    @Override
    public void layoutContainer(Container parent) {
        new Plan(width(parent), room(parent)).place(parent.getHeight());
    }

    /** Where everything goes in a foot so wide. */
    private final class Plan {
        private final int inside;
        private final int buttonRow;
        private final int progressWide;
        private final boolean beside;
        private final int wordsWide;
        private final boolean low;
        private int captioned = 2;

        Plan(int width, int room) {
            low = room < Look.px(CRAMPED);
            inside = width - 2 * Look.px(INSET);
            int all = 0;
            for (Component one : buttons.getComponents()) {
                all += one.getPreferredSize().width + Look.px(GAP);
            }
            boolean shown = progress.isVisible();
            int words = inside - all - (shown ? Look.px(PROGRESS_WIDTH + INSET) : 0);
            beside = words >= Look.px(WORDS_LEAST);
            wordsWide = beside ? words : inside;
            buttonRow = beside ? all : Math.min(inside, Math.max(all, 1));
            progressWide = shown ? beside ? Look.px(PROGRESS_WIDTH) : Look.px(PROGRESS_LEAST) : 0;
            captioned = low && height() > room * MOST ? 1 : 2;
        }

        /** What happens always; what comes next where there is room for it. */
        private List<Label> told() {
            return words.subList(0, Math.min(captioned, words.size()));
        }

        private int button() {
            return Look.px(low ? LOW_BUTTON : BUTTON);
        }

        private int wordsHigh() {
            return told().stream()
                    .filter(one -> !one.getText().isEmpty())
                    .mapToInt(one -> one.heightAt(wordsWide))
                    .sum();
        }

        int height() {
            int below = beside ? 0 : rows(0, false) + Look.px(AIR);
            return Math.max(beside ? Look.px(LEAST) : 0, wordsHigh() + below + 2 * Look.px(AIR));
        }

        void place(int high) {
            int y = beside ? (high - wordsHigh()) / 2 : Look.px(AIR);
            for (Label one : words) {
                boolean seen = told().contains(one) && !one.getText().isEmpty();
                int tall = seen ? one.heightAt(wordsWide) : 0;
                one.setBounds(Look.px(INSET), y, wordsWide, tall);
                y += tall;
            }
            if (beside) {
                int bar = Look.px(PROGRESS_HEIGHT);
                progress.setBounds(Look.px(INSET) + wordsWide, (high - bar) / 2, progressWide, bar);
                int rows = rows(0, false);
                buttons.setBounds(Look.px(INSET) + inside - buttonRow, (high - rows) / 2, buttonRow, rows);
            } else {
                y += Look.px(AIR);
                progress.setBounds(Look.px(INSET), y, progressWide, Look.px(PROGRESS_HEIGHT));
                int left = progressWide == 0 ? 0 : progressWide + Look.px(INSET);
                buttons.setBounds(Look.px(INSET) + left, y, inside - left, rows(0, false));
            }
            rows(0, true);
        }

        /** The buttons from the right, the usual one last; answers how high they are. */
        private int rows(int top, boolean really) {
            int left = beside || progressWide == 0 ? 0 : progressWide + Look.px(INSET);
            int wide = (beside ? buttonRow : inside) - left;
            int y = top;
            int from = 0;
            int count = buttons.getComponentCount();
            while (from < count) {
                int used = 0;
                int to = from;
                while (to < count && (to == from || used + wide(to) <= wide)) {
                    used += wide(to) + Look.px(GAP);
                    to++;
                }
                int x = wide - used + Look.px(GAP);
                for (int i = from; i < to && really; i++) {
                    buttons.getComponent(i).setBounds(Math.max(0, x), y, Math.min(wide(i), wide), button());
                    x += wide(i) + Look.px(GAP);
                }
                y += button() + Look.px(to < count ? 6 : 0);
                from = to;
            }
            return Math.max(y - top, progressWide > 0 && !beside ? Look.px(PROGRESS_HEIGHT) : 0);
        }

        private int wide(int button) {
            return buttons.getComponent(button).getPreferredSize().width;
        }
    }
}
