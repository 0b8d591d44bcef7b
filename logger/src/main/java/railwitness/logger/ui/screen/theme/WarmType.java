package railwitness.logger.ui.screen.theme;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;

/** Draws every type once, off the screen and off the event thread, so that no stage waits for its letters later. */
public final class WarmType {
    private static final String LETTERS =
            "0123456789 abcdefghijklmnopqrstuvwxyz ABCDEFGHIJKLMNOPQRSTUVWXYZ .,:;()+-%\u2212\u2026\u00b7\u03a9";

    private WarmType() {}

    /** Begins, and returns at once; the look must be installed before. */
    public static void begin() {
        Thread thread = new Thread(WarmType::draw, "warming type");
        thread.setDaemon(true);
        thread.setPriority(Thread.MIN_PRIORITY);
        thread.start();
    }

    private static void draw() {
        Graphics2D g = new BufferedImage(8, 8, BufferedImage.TYPE_INT_RGB).createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        for (Type type : Type.values()) {
            g.setFont(type.font());
            g.drawString(LETTERS, 0, 4);
        }
        g.fillRoundRect(0, 0, 6, 6, 2, 2);
        g.dispose();
    }
}
