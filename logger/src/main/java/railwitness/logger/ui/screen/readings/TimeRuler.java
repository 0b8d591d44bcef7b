package railwitness.logger.ui.screen.readings;

import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import javax.swing.JComponent;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.trace.TraceView;

/** The time axis under the traces, in round steps from days to milliseconds. */
final class TimeRuler extends JComponent {
    private static final double[] ROUND = {
        0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600,
        7200, 10800, 21600, 43200, 86400, 172800, 345600, 691200
    };

    private transient Reach reach = Reach.all(1);

    void show(Reach wanted) {
        if (!wanted.equals(reach)) {
            reach = wanted;
            repaint();
        }
    }

    /** The least round step of which at most so many fit. */
    static double step(double length, int most) {
        for (double step : ROUND) {
            if (length / step <= Math.max(1, most)) {
                return step;
            }
        }
        return ROUND[ROUND.length - 1];
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setFont(Type.AXIS.font());
        FontMetrics metrics = g.getFontMetrics();
        int left = TraceView.left();
        int width = getWidth() - left - TraceView.right();
        double step = step(reach.length(), width / (metrics.stringWidth("00:00:00.000") + Look.px(16)));
        g.setColor(Look.palette().muted());
        for (double at = Math.ceil(reach.from() / step) * step; at <= reach.to(); at += step) {
            int x = left + (int) Math.round((at - reach.from()) / reach.length() * width);
            g.fillRect(x, 0, 1, Look.px(4));
            String label = Elapsed.of(at, Elapsed.places(step));
            int begin = Math.min(getWidth() - metrics.stringWidth(label), x - metrics.stringWidth(label) / 2);
            g.drawString(label, Math.max(0, begin), Look.px(6) + metrics.getAscent());
        }
        g.dispose();
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(Look.px(200), Look.px(22));
    }
}
