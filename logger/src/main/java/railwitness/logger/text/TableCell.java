package railwitness.logger.text;

import java.util.Locale;

/**
 * Text in a cell of a table that other programs open. What a spreadsheet would take for a formula gets an apostrophe in
 * front, and what does not show itself is written as its code. Both can be taken back:
 *
 * <ul>
 *   <li>a text whose first character that is no space is one of = + - @ (or their full-width forms) or that begins with an
 *       apostrophe gets an apostrophe in front;
 *   <li>a backslash is written as two, a control character (tab and line ends too), mark of direction or other invisible
 *       sign as a backslash, u and four hexadecimal digits for each of its UTF-16 units.
 * </ul>
 */
public final class TableCell {
    private static final String BEGINS_FORMULA = "=+-@\uFF1D\uFF0B\uFF0D\uFF20";

    private TableCell() {}

    /** The text as it is written into a cell. */
    public static String of(String text) {
        StringBuilder cell = new StringBuilder(text.length() + 1);
        if (isTakenForFormula(text)) {
            cell.append('\'');
        }
        text.codePoints().forEach(codePoint -> append(cell, codePoint));
        return cell.toString();
    }

    private static boolean isTakenForFormula(String text) {
        String begin = text.stripLeading();
        return text.startsWith("'") || !begin.isEmpty() && BEGINS_FORMULA.indexOf(begin.charAt(0)) >= 0;
    }

    private static void append(StringBuilder cell, int codePoint) {
        if (codePoint == '\\') {
            cell.append("\\\\");
        } else if (VisibleText.acts(codePoint)) {
            for (char unit : Character.toChars(codePoint)) {
                cell.append(String.format(Locale.ROOT, "\\u%04x", (int) unit));
            }
        } else {
            cell.appendCodePoint(codePoint);
        }
    }

    /**
     * The text that was written into a cell.
     *
     * @throws IllegalArgumentException where a backslash begins nothing that {@link #of} writes
     */
    public static String text(String cell) {
        StringBuilder text = new StringBuilder(cell.length());
        int at = cell.startsWith("'") ? 1 : 0;
        while (at < cell.length()) {
            char next = cell.charAt(at);
            if (next != '\\') {
                text.append(next);
                at++;
            } else if (cell.startsWith("\\\\", at)) {
                text.append('\\');
                at += 2;
            } else {
                text.append(unit(cell, at));
                at += 6;
            }
        }
        return text.toString();
    }

    private static char unit(String cell, int at) {
        if (at + 6 <= cell.length()
                && cell.charAt(at + 1) == 'u'
                && cell.substring(at + 2, at + 6).matches("[0-9a-f]{4}")) {
            return (char) Integer.parseInt(cell.substring(at + 2, at + 6), 16);
        }
        throw new IllegalArgumentException("'" + cell + "' has a lone backslash; write it as two");
    }
}
