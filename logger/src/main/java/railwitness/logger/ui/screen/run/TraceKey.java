package railwitness.logger.ui.screen.run;

import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import javax.swing.JComponent;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Words;

/** Says what tint and dashes mean. */
final class TraceKey extends JComponent {
    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Look.palette();
        int y = getHeight() / 2;
        g.setColor(palette.tint());
        g.fillRect(0, y - Look.px(6), Look.px(26), Look.px(12));
        g.setColor(palette.rule());
        g.drawRect(0, y - Look.px(6), Look.px(26), Look.px(12));
        g.setFont(Type.CAPTION.font());
        g.setColor(palette.muted());
        int base = y + g.getFontMetrics().getAscent() / 2 - 1;
        int x = Look.px(34);
        String averaged = Words.of("run.key.averaged");
        g.drawString(averaged, x, base);
        x += g.getFontMetrics().stringWidth(averaged) + Look.px(20);
        g.setColor(palette.pencil());
        g.setStroke(new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {5, 5}, 0));
        g.drawLine(x, y, x + Look.px(30), y);
        g.setColor(palette.muted());
        g.drawString(Words.of("run.key.predicted"), x + Look.px(38), base);
        g.dispose();
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(Look.px(260), Look.px(24));
    }
}
