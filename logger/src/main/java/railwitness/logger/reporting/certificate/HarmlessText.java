package railwitness.logger.reporting.certificate;

import java.text.Normalizer;
import java.util.Locale;
import java.util.function.IntPredicate;

/**
 * Text from sheets, instruments and people as it may be printed: no control character, mark of direction or other
 * invisible sign does anything, and what the font cannot show is written as its code point, such as [U+202E].
 */
final class HarmlessText {
    private static final int MOST_MARKS = 2;

    private final IntPredicate hasGlyph;

    HarmlessText(IntPredicate hasGlyph) {
        this.hasGlyph = hasGlyph;
    }

    String of(String text) {
        StringBuilder clean = new StringBuilder();
        StringBuilder codes = new StringBuilder();
        int[] marks = {MOST_MARKS};
        Normalizer.normalize(text, Normalizer.Form.NFC).codePoints().forEach(codePoint -> {
            if (isSpace(codePoint)) {
                flush(codes, clean);
                clean.append(' ');
            } else if (isShown(codePoint, marks)) {
                flush(codes, clean);
                clean.appendCodePoint(codePoint);
            } else {
                codes.append(codes.isEmpty() ? "[" : " ").append(String.format(Locale.ROOT, "U+%04X", codePoint));
            }
        });
        flush(codes, clean);
        return clean.toString();
    }

    private static void flush(StringBuilder codes, StringBuilder clean) {
        if (!codes.isEmpty()) {
            clean.append(codes).append(']');
            codes.setLength(0);
        }
    }

    private static boolean isSpace(int codePoint) {
        return codePoint == '\n'
                || codePoint == '\r'
                || codePoint == '\t'
                || Character.getType(codePoint) == Character.SPACE_SEPARATOR;
    }

    /** A letter bears two marks at the most, so that no tower of them covers the lines above. */
    private boolean isShown(int codePoint, int[] marks) {
        if (Character.getType(codePoint) == Character.NON_SPACING_MARK) {
            return marks[0]++ < MOST_MARKS && hasGlyph.test(codePoint);
        }
        marks[0] = Character.isLetter(codePoint) ? 0 : MOST_MARKS;
        return isShown(codePoint);
    }

    private boolean isShown(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED,
                    Character.ENCLOSING_MARK -> false;
            default -> hasGlyph.test(codePoint);
        };
    }
}
