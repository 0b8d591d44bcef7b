package railwitness.drivers.scpi;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.drivers.line.Visible;

/**
 * One entry of the error queue: number, text, and what the instrument adds after a semicolon inside the quotes. Negative
 * numbers are SCPI's own, positive ones the instrument's; zero ends the queue.
 */
public record ErrorEntry(int number, String text, String detail) {
    private static final Pattern FORM = Pattern.compile("\\s*([+-]?\\d{1,6})\\s*(?:,\\s*(.*?)\\s*)?", Pattern.DOTALL);
    /** SCPI-1999 allows 255 characters of text (from memory); some instruments add what they were told. */
    private static final int LONGEST = 2000;

    private static final int UNDEFINED_HEADER = -113;

    /**
     * Reads {@code -222,"Data out of range;VOLT 99"}; quotes may be lacking or doubled, and the text may be left out.
     *
     * @throws IllegalArgumentException when it is no such entry
     */
    public static ErrorEntry of(String reply) {
        Matcher matcher = FORM.matcher(reply);
        if (reply.length() > LONGEST || !matcher.matches()) {
            throw new IllegalArgumentException("'" + Visible.text(reply) + "' is no entry of an error queue");
        }
        String whole = matcher.group(2) == null ? "" : unquoted(matcher.group(2));
        int semicolon = whole.indexOf(';');
        return new ErrorEntry(
                Integer.parseInt(matcher.group(1)),
                semicolon < 0 ? whole : whole.substring(0, semicolon),
                semicolon < 0 ? "" : whole.substring(semicolon + 1));
    }

    private static String unquoted(String text) {
        if (text.length() < 2 || text.charAt(0) != '"' || !text.endsWith("\"")) {
            return text;
        }
        return text.substring(1, text.length() - 1).replace("\"\"", "\"");
    }

    /** True for the entry that says the queue is empty. */
    public boolean isNone() {
        return number == 0;
    }

    /** True when the instrument does not know what it was told (the kind of instrument may be wrong). */
    public boolean isUnknownCommand() {
        return number == UNDEFINED_HEADER;
    }

    /** As an instrument sends it. */
    public String reply() {
        String whole = detail.isEmpty() ? text : text + ";" + detail;
        return number + ",\"" + whole.replace("\"", "\"\"") + "\"";
    }

    @Override
    public String toString() {
        return number + " " + text + (detail.isEmpty() ? "" : " (" + detail + ")");
    }
}
