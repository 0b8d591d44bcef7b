package railwitness.logger.ui.screen.window;

import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import javax.swing.JButton;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;

/** The word of one stage. One that cannot be entered yet is in pencil, stays reachable and says why. */
final class Tab extends JButton {
    private boolean present;
    private boolean open = true;
    private boolean cramped;

    Tab(String name, String word, Runnable entered) {
        super(word);
        setName(name);
        setContentAreaFilled(false);
        setBorderPainted(false);
        setFocusPainted(false);
        setRolloverEnabled(true);
        addActionListener(e -> entered.run());
    }

    /**
     * @param here the person is at this stage
     * @param why why it cannot be entered yet; empty when it can
     */
    void state(boolean here, String why) {
        if (here != present || open != why.isEmpty()) {
            present = here;
            open = why.isEmpty();
            setToolTipText(open ? null : why);
            getAccessibleContext().setAccessibleDescription(why);
            repaint();
        }
    }

    /** Lower where the window is low. */
    void cramped(boolean wanted) {
        if (wanted != cramped) {
            cramped = wanted;
            revalidate();
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Look.palette();
        g.setFont(present ? Type.TEXT_STRONG.font() : open ? Type.TEXT.font() : Type.PENCIL_TEXT.font());
        g.setColor(
                present || getModel().isRollover() && open ? palette.ink() : open ? palette.muted() : palette.pencil());
        FontMetrics metrics = g.getFontMetrics();
        String text = getText();
        g.drawString(text, (getWidth() - metrics.stringWidth(text)) / 2, getHeight() / 2 + metrics.getAscent() / 2 - 2);
        g.setColor(palette.ink());
        if (present) {
            g.fillRect(0, getHeight() - Look.px(3), getWidth(), Look.px(3));
        }
        if (isFocusOwner()) {
            g.setColor(palette.muted());
            g.setStroke(new BasicStroke(Look.px(1)));
            g.drawRoundRect(2, 3, getWidth() - 5, getHeight() - Look.px(8), Look.px(6), Look.px(6));
        }
        g.dispose();
    }

    @Override
    public Dimension getPreferredSize() {
        int width = getFontMetrics(Type.TEXT_STRONG.font()).stringWidth(getText());
        return new Dimension(width + Look.px(30), Look.px(cramped ? 30 : 40));
    }
}
