package railwitness.logger.ui.screen.widgets;

import java.awt.FontMetrics;
import java.util.ArrayList;
import java.util.List;

/** A text in as many lines as its place needs. Nothing of it is left out, and a number keeps its sign and its unit. */
public final class Wrapped {
    private Wrapped() {}

    /** The lines, each no wider than the place unless a single letter is. */
    public static List<String> of(String text, FontMetrics metrics, int width) {
        if (metrics.stringWidth(text) <= width) {
            return List.of(text);
        }
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : words(text)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (metrics.stringWidth(longer) <= width) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            String rest = word;
            while (metrics.stringWidth(rest) > width && rest.length() > 1) {
                int fits = fitting(rest, metrics, width);
                lines.add(rest.substring(0, fits));
                rest = rest.substring(fits);
            }
            line = rest;
        }
        lines.add(line);
        return lines;
    }

    /** The widest of the words of at most so many letters: as narrow as the text can be without breaking one of them. */
    static int widestWord(String text, int letters, FontMetrics metrics) {
        return words(text).stream()
                .filter(word -> word.length() <= letters)
                .mapToInt(metrics::stringWidth)
                .max()
                .orElse(0);
    }

    /** A blank between a number and its unit, or before a sign's number, does not part them. */
    private static List<String> words(String text) {
        List<String> words = new ArrayList<>();
        for (String word : text.split(" ")) {
            int last = words.size() - 1;
            boolean unit = last >= 0
                    && words.get(last).matches(".*\\d")
                    && word.matches("(V|A|W|\u03a9|%|s|min|h|mV|mA|m\u03a9|kHz|Hz|T|\u00b0C|K)\\W?");
            boolean sign = last >= 0 && words.get(last).matches("\u00b1|\u2264|\u2265|\u2212|\\+");
            boolean pair = last >= 0 && (word.equals("/") || words.get(last).endsWith(" /"));
            if (unit || sign || pair) {
                words.set(last, words.get(last) + " " + word);
            } else {
                words.add(word);
            }
        }
        return words;
    }

    private static int fitting(String word, FontMetrics metrics, int width) {
        int length = word.length();
        while (length > 1 && metrics.stringWidth(word.substring(0, length)) > width) {
            length--;
        }
        return length;
    }
}
