package railwitness.logger.ui.screen.window;

import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.Optional;
import javax.swing.JComponent;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Numbers;

/** How far something is, as words and as a line. */
final class ProgressLine extends JComponent {
    private transient Optional<StatusLine.Progress> shown = Optional.empty();

    void show(Optional<StatusLine.Progress> progress) {
        if (!progress.equals(shown)) {
            shown = progress;
            repaint();
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        shown.ifPresent(progress -> paint(graphics, progress));
    }

    private void paint(Graphics graphics, StatusLine.Progress progress) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Look.palette();
        g.setFont(Type.CAPTION.font());
        g.setColor(palette.muted());
        FontMetrics metrics = g.getFontMetrics();
        int y = metrics.getAscent() + Look.px(2);
        g.drawString(progress.words(), 0, y);
        String percent = Numbers.fixed(progress.share() * 100, 0) + " %";
        g.drawString(percent, getWidth() - metrics.stringWidth(percent), y);
        int thick = Look.px(6);
        int top = getHeight() - thick - Look.px(8);
        g.setColor(palette.rule());
        g.fillRoundRect(0, top, getWidth(), thick, thick, thick);
        g.setColor(palette.ink());
        g.fillRoundRect(0, top, (int) Math.round(getWidth() * progress.share()), thick, thick, thick);
        g.dispose();
    }
}
