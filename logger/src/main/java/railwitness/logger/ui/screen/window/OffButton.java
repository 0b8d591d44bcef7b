package railwitness.logger.ui.screen.window;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import javax.swing.JButton;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Words;

/** The one big button. It is never dimmed: a read-back may lie. */
final class OffButton extends JButton {
    private static final Color PAPER = Color.WHITE;
    private static final Color INK = new Color(0x1D1600);

    private boolean live;

    OffButton(Runnable switchOff) {
        super(Words.of("off"));
        setName("switch off");
        getAccessibleContext().setAccessibleName(Words.of("off"));
        getAccessibleContext().setAccessibleDescription(Words.of("off.description"));
        setContentAreaFilled(false);
        setBorderPainted(false);
        setFocusPainted(false);
        addActionListener(e -> switchOff.run());
    }

    /** @param on the output may be on: black on white, whatever the theme */
    void live(boolean on) {
        live = on;
        repaint();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Look.palette();
        Color ground = live ? PAPER : palette.sheet();
        Color ink = live ? INK : palette.ink();
        int edge = Look.px(2);
        int arc = Look.px(8);
        g.setColor(getModel().isArmed() || getModel().isRollover() ? mixed(ground, ink) : ground);
        g.fillRoundRect(edge, edge, getWidth() - 2 * edge, getHeight() - 2 * edge, arc, arc);
        g.setColor(ink);
        g.setStroke(new BasicStroke(isFocusOwner() ? Look.px(4) : edge));
        g.drawRoundRect(edge, edge, getWidth() - 2 * edge - 1, getHeight() - 2 * edge - 1, arc, arc);
        text(g);
        g.dispose();
    }

    private void text(Graphics2D g) {
        Font big = Type.OFF_BUTTON.font();
        Font small = Type.TEXT.font();
        FontMetrics bigger = g.getFontMetrics(big);
        FontMetrics smaller = g.getFontMetrics(small);
        String key = Words.of("off.key");
        int gap = Look.px(12);
        int x = (getWidth() - bigger.stringWidth(getText()) - gap - smaller.stringWidth(key)) / 2;
        int y = (getHeight() + bigger.getAscent() - bigger.getDescent()) / 2;
        g.setFont(big);
        g.drawString(getText(), x, y);
        g.setFont(small);
        g.drawString(key, x + bigger.stringWidth(getText()) + gap, y);
    }

    private static Color mixed(Color ground, Color ink) {
        return new Color(
                (ground.getRed() * 9 + ink.getRed()) / 10,
                (ground.getGreen() * 9 + ink.getGreen()) / 10,
                (ground.getBlue() * 9 + ink.getBlue()) / 10);
    }
}
