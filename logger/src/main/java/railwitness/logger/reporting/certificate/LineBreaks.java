package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Where a line may be broken: behind a space, but not between a number and its unit. */
final class LineBreaks {
    private static final Pattern STANDS_WITH_NUMBER = Pattern.compile(
            "(?:[0-9]{3}|%|\u00b1|\u03a9|\u00b0C|[munk]?[VAW]|k?Hz|ohm|degC|s|readings)(?:$|[^\\p{L}\\p{N}].*)",
            Pattern.DOTALL);

    private LineBreaks() {}

    /** The words, each with the space behind it. */
    static List<String> of(String text) {
        List<String> words = new ArrayList<>();
        for (String piece : text.split("(?<= )")) {
            int last = words.size() - 1;
            if (last >= 0 && together(words.get(last), piece)) {
                words.set(last, words.get(last) + piece);
            } else {
                words.add(piece);
            }
        }
        return words;
    }

    private static boolean together(String before, String piece) {
        String bare = before.stripTrailing();
        if (bare.isEmpty()) {
            return false;
        }
        boolean number = Character.isDigit(bare.charAt(bare.length() - 1));
        return bare.endsWith("\u00b1")
                || number && STANDS_WITH_NUMBER.matcher(piece.stripTrailing()).matches();
    }
}
