package railwitness.drivers.sheet;

/**
 * A piece of a sheet's text; all pieces together are the text.
 *
 * @param kind one of the constants, or the sign itself for one of = . , [ ] { }
 * @param from its first character, from 0
 * @param to behind its last one
 */
public record TomlToken(char kind, int from, int to) {
    /** Blanks and tabs, the return before a line's end, the byte-order mark. */
    public static final char BLANK = ' ';

    public static final char LINE_END = '\n';
    public static final char COMMENT = '#';
    /** Of any of the four forms, with its quotes. */
    public static final char STRING = '"';
    /** A bare key, or a piece of a number, a date or a truth. */
    public static final char WORD = 'w';

    /** Whether it only stands between what counts. */
    public boolean idle() {
        return kind == BLANK || kind == LINE_END || kind == COMMENT;
    }
}
