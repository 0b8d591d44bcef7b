package railwitness.logger.ui.screen.widgets;

import java.util.Locale;

/** Words from below as sentences. */
public final class Sentences {
    private Sentences() {}

    /** Beginning with a capital letter. */
    public static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
