package railwitness.logger.ui.screen.widgets;

import java.awt.FontMetrics;

/** A text that may be too long for its place. */
public final class Elision {
    private static final String MORE = "\u2026";

    private Elision() {}

    /** As much of the text as fits, with three dots at its end when it is cut. */
    public static String of(String text, FontMetrics metrics, int width) {
        if (metrics.stringWidth(text) <= width) {
            return text;
        }
        int length = text.length();
        while (length > 0 && metrics.stringWidth(text.substring(0, length) + MORE) > width) {
            length--;
        }
        return length == 0 ? "" : text.substring(0, length).stripTrailing() + MORE;
    }
}
