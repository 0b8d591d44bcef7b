package railwitness.logger.ui.screen.readings;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.List;
import java.util.function.DoubleConsumer;
import javax.swing.JComponent;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.trace.StepSpan;
import railwitness.logger.ui.screen.trace.TraceView;

/** All of the session in one strip, with the stretch that is looked at; a click goes there. */
final class WholeStrip extends JComponent {
    private static final int LEAST_MARK = 3;

    private transient Reach reach = Reach.all(1);
    private transient List<StepSpan> steps = List.of();

    /** @param wanted told the moment that was clicked, s */
    WholeStrip(DoubleConsumer wanted) {
        MouseAdapter mouse = new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                double share = (e.getX() - left()) / (double) Math.max(1, width());
                wanted.accept(Math.max(0, Math.min(1, share)) * reach.whole());
            }

            @Override
            public void mouseDragged(MouseEvent e) {
                mousePressed(e);
            }
        };
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
    }

    void show(Reach wanted) {
        if (!wanted.equals(reach)) {
            reach = wanted;
            repaint();
        }
    }

    /** The steps of the session. */
    void show(List<StepSpan> wanted) {
        if (!wanted.equals(steps)) {
            steps = List.copyOf(wanted);
            repaint();
        }
    }

    private static int left() {
        return TraceView.left();
    }

    private int width() {
        return getWidth() - left() - TraceView.right();
    }

    /** As every strip of the sheet: a line for all of it, a stroke where a step begins, what is seen in ink between two ends. */
    @Override
    protected void paintComponent(Graphics g) {
        Palette palette = Look.palette();
        int middle = getHeight() / 2;
        g.setColor(palette.strongRule());
        g.fillRect(left(), middle, width(), 1);
        for (StepSpan step : steps) {
            int half = Look.px(4);
            g.fillRect(place(step.fromSeconds()), middle - half, 1, 2 * half + 1);
        }
        int from = place(reach.from());
        int seen = Math.max(LEAST_MARK, place(reach.from() + reach.length()) - from);
        int half = Look.px(8);
        int thick = Look.px(3);
        g.setColor(palette.ink());
        g.fillRect(from, middle - thick / 2, seen, thick);
        g.fillRect(from, middle - half, Look.px(2), 2 * half);
        g.fillRect(from + seen - Look.px(2), middle - half, Look.px(2), 2 * half);
    }

    private int place(double seconds) {
        return left() + (int) Math.round(seconds / Math.max(1e-9, reach.whole()) * width());
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(Look.px(200), Look.px(26));
    }
}
