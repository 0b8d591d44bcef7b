package railwitness.logger.text;

import java.util.Locale;

/** Shows what would otherwise act: control characters, marks of direction and other invisible signs. */
public final class VisibleText {
    private VisibleText() {}

    /** One line in which every character that does not show itself is written as a code point, such as [U+202E]. */
    public static String line(String text) {
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(codePoint -> {
            if (acts(codePoint)) {
                shown.append(String.format(Locale.ROOT, "[U+%04X]", codePoint));
            } else {
                shown.appendCodePoint(codePoint);
            }
        });
        return shown.toString();
    }

    /**
     * The beginning of a text that is longer than so many characters, with how many more there are; else the text itself.
     *
     * @param most 1 or more
     */
    public static String shortened(String text, int most) {
        if (text.length() <= most) {
            return text;
        }
        int end = Character.isHighSurrogate(text.charAt(most - 1)) ? most - 1 : most;
        return text.substring(0, end) + "\u2026 (" + (text.length() - end) + " more characters)";
    }

    /** Text of JSON in which what does not show itself is written as its escape; what ends lines stays. */
    public static String json(String text) {
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(codePoint -> {
            if (codePoint != '\n' && codePoint != '\r' && acts(codePoint)) {
                for (char unit : Character.toChars(codePoint)) {
                    shown.append(String.format(Locale.ROOT, "\\u%04x", (int) unit));
                }
            } else {
                shown.appendCodePoint(codePoint);
            }
        });
        return shown.toString();
    }

    /** Controls, formats (marks of direction among them), line and paragraph separators, halves of characters. */
    static boolean acts(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.SURROGATE -> true;
            default -> false;
        };
    }
}
