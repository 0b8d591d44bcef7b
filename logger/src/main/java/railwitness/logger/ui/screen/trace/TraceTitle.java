package railwitness.logger.ui.screen.trace;

import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import javax.swing.JComponent;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;

/** What stands above a trace: its name, its value, a remark. */
final class TraceTitle extends JComponent {
    private static final int HEIGHT = 28;

    private transient TraceModel model = TraceModel.empty();

    void show(TraceModel next) {
        boolean same = next.title().equals(model.title())
                && next.value().equals(model.value())
                && next.remark().equals(model.remark());
        model = next;
        if (!same) {
            repaint();
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Look.palette();
        int y = Look.px(HEIGHT - 9);
        g.setFont(Type.HEADING.font());
        g.setColor(palette.ink());
        g.drawString(model.title(), 0, y);
        int x = g.getFontMetrics().stringWidth(model.title()) + Look.px(8);
        g.setFont(Type.TEXT.font());
        g.setColor(palette.muted());
        g.drawString(model.value(), x, y);
        int used = x + g.getFontMetrics().stringWidth(model.value()) + Look.px(16);
        g.setFont(Type.CAPTION.font());
        FontMetrics metrics = g.getFontMetrics();
        int left = getWidth() - metrics.stringWidth(model.remark());
        if (left >= used) {
            g.drawString(model.remark(), left, y);
        }
        g.dispose();
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(Look.px(420), Look.px(HEIGHT));
    }
}
