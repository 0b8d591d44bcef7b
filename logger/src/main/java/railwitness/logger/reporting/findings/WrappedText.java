package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines at its spaces. */
final class WrappedText {
    private WrappedText() {}

    /**
     * Lines of at most so many signs; a single word that is longer keeps a line to itself.
     *
     * @param indent in front of every line but the first
     */
    static List<String> lines(String text, int widest, String indent) {
        List<String> lines = new ArrayList<>();
        String rest = text;
        while (rest.length() > widest) {
            int from = rest.length() - rest.stripLeading().length();
            int at = rest.lastIndexOf(' ', widest);
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
}
