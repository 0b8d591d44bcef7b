package railwitness.drivers.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Cuts TOML into its pieces without losing a character. It takes any text: what is not in order, such as a string without
 * its end, ends with its line, and the parser says what is wrong.
 */
public final class TomlLexer {
    private static final String SIGNS = "=.,[]{}";
    private static final String BETWEEN = " \t\r\uFEFF";
    private static final String ESCAPES = "btnfr\"\\";
    private static final String ESCAPED = "\b\t\n\f\r\"\\";

    private final String text;
    private int at;

    private TomlLexer(String text) {
        this.text = text;
    }

    public static List<TomlToken> tokens(String text) {
        TomlLexer lexer = new TomlLexer(text);
        List<TomlToken> tokens = new ArrayList<>();
        while (lexer.at < text.length()) {
            int from = lexer.at;
            tokens.add(new TomlToken(lexer.kind(text.charAt(from)), from, lexer.at));
        }
        return tokens;
    }

    /** Steps over a piece. */
    private char kind(char first) {
        if (SIGNS.indexOf(first) >= 0 || first == '\n') {
            at++;
            return first;
        }
        if (first == '"' || first == '\'') {
            string(String.valueOf(first));
            return TomlToken.STRING;
        }
        if (first == '#') {
            int end = lineEnd();
            at = text.startsWith("\r\n", end - 1) ? end - 1 : end;
            return TomlToken.COMMENT;
        }
        boolean between = BETWEEN.indexOf(first) >= 0;
        while (at < text.length()
                && (between
                        ? BETWEEN.indexOf(text.charAt(at)) >= 0
                        : (BETWEEN + SIGNS + "\n\"'#").indexOf(text.charAt(at)) < 0)) {
            at++;
        }
        return between ? TomlToken.BLANK : TomlToken.WORD;
    }

    private int lineEnd() {
        int end = text.indexOf('\n', at);
        return end < 0 ? text.length() : end;
    }

    private void string(String quote) {
        boolean spread = text.startsWith(quote.repeat(3), at);
        int end = spread ? text.length() : lineEnd();
        String close = spread ? quote.repeat(3) : quote;
        at += close.length();
        while (at < end && !text.startsWith(close, at)) {
            at += quote.equals("\"") && text.charAt(at) == '\\' ? 2 : 1;
        }
        at = Math.min(end, at + close.length());
        for (int more = 0; spread && more < 2 && text.startsWith(quote, at); more++) {
            at++;
        }
    }

    /** The texts in a value, without quotes and escapes; none where it has no string. */
    public static List<String> texts(String literal) {
        return tokens(literal).stream()
                .filter(token -> token.kind() == TomlToken.STRING)
                .map(token -> text(literal.substring(token.from(), token.to())))
                .toList();
    }

    private static String text(String string) {
        String quote = string.substring(0, 1);
        boolean spread = string.length() >= 6 && string.startsWith(quote.repeat(3));
        int quotes = spread ? 3 : 1;
        String inside = string.substring(quotes, Math.max(quotes, string.length() - quotes));
        if (spread) {
            inside = inside.replaceFirst("^\r?\n", "");
        }
        return quote.equals("'") ? inside : unescaped(inside);
    }

    private static String unescaped(String inside) {
        StringBuilder said = new StringBuilder();
        for (int i = 0; i < inside.length(); i++) {
            char next = i + 1 < inside.length() ? inside.charAt(i + 1) : ' ';
            int digits = next == 'u' ? 4 : next == 'U' ? 8 : 0;
            int code = digits == 0 ? -1 : code(inside, i + 2, i + 2 + digits);
            if (inside.charAt(i) != '\\') {
                said.append(inside.charAt(i));
            } else if (code >= 0) {
                said.appendCodePoint(code);
                i += 1 + digits;
            } else if (ESCAPES.indexOf(next) >= 0) {
                said.append(ESCAPED.charAt(ESCAPES.indexOf(next)));
                i++;
            } else {
                while (i + 1 < inside.length() && Character.isWhitespace(inside.charAt(i + 1))) {
                    i++;
                }
            }
        }
        return said.toString();
    }

    /** Number of a character from its hexadecimal digits; -1 where they are none. */
    private static int code(String inside, int from, int to) {
        String hex = inside.substring(from, Math.min(to, inside.length()));
        boolean digits = hex.length() == to - from && hex.matches("[0-9A-Fa-f]+");
        long code = digits ? Long.parseLong(hex, 16) : -1;
        return code <= Character.MAX_CODE_POINT ? (int) code : -1;
    }

    /** The text as a string of TOML that stands on one line. */
    public static String quoted(String text) {
        StringBuilder string = new StringBuilder("\"");
        text.chars().forEach(unit -> {
            int escape = ESCAPED.indexOf(unit);
            if (escape >= 0) {
                string.append('\\').append(ESCAPES.charAt(escape));
            } else if (Character.isISOControl(unit)) {
                string.append(String.format(Locale.ROOT, "\\u%04x", unit));
            } else {
                string.append((char) unit);
            }
        });
        return string.append('"').toString();
    }

    /** Key of one part as it is written: bare where it may be. */
    public static String key(String part) {
        return part.matches("[A-Za-z0-9_-]+") ? part : quoted(part);
    }
}
