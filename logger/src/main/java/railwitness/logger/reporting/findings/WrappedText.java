package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import railwitness.logger.text.VisibleText;

/** Breaks text into lines at its spaces. */
final class WrappedText {
    private static final Pattern BELONGS = Pattern.compile("^ (V|A|W|ohm|mV|kHz|MHz|s|%)\\b|^ %");

    /** More than anybody reads of one paragraph. */
    private static final int LONGEST = 4_000;

    private WrappedText() {}

    /**
     * Lines of at most so many signs; a single word that is longer keeps a line to itself. Of a text of many thousands of
     * signs the beginning stands.
     *
     * @param indent in front of every line but the first
     */
    static List<String> lines(String text, int widest, String indent) {
        List<String> lines = new ArrayList<>();
        String rest = VisibleText.shortened(text, LONGEST);
        while (rest.length() > widest) {
            int from = rest.length() - rest.stripLeading().length();
            int at = lastBreak(rest, widest);
            if (at <= from) {
                at = rest.indexOf(' ', widest);
            }
            if (at <= from) {
                break;
            }
            lines.add(rest.substring(0, at).stripTrailing());
            rest = indent + rest.substring(at).stripLeading();
        }
        lines.add(rest);
        return lines;
    }

    /** The last space within the width that does not part a number from its uncertainty or its unit. */
    private static int lastBreak(String text, int widest) {
        int at = text.lastIndexOf(' ', widest);
        while (at > 0
                && (text.startsWith("+-", at + 1)
                        || text.startsWith("+-", at - 2)
                        || BELONGS.matcher(text.substring(at)).find())) {
            at = text.lastIndexOf(' ', at - 1);
        }
        return at;
    }
}
