package railwitness.logger.reporting.certificate;

import java.text.Bidi;
import java.util.ArrayList;
import java.util.List;

/** A line in the order in which it is drawn from left to right, for scripts that run from right to left. */
final class ReadingOrder {
    private static final String OPEN = "()[]{}<>\u00ab\u00bb";
    private static final String CLOSE = ")(][}{><\u00bb\u00ab";

    private ReadingOrder() {}

    /** Whether anything has to be turned. */
    static boolean turns(String line) {
        return line.chars().anyMatch(c -> c >= 0x590) && Bidi.requiresBidi(line.toCharArray(), 0, line.length());
    }

    /** The line as drawn; the paper's own direction is from left to right. */
    static String drawn(String line) {
        if (!turns(line)) {
            return line;
        }
        Bidi bidi = new Bidi(line, Bidi.DIRECTION_LEFT_TO_RIGHT);
        int count = bidi.getRunCount();
        byte[] levels = new byte[count];
        Integer[] places = new Integer[count];
        for (int i = 0; i < count; i++) {
            levels[i] = (byte) bidi.getRunLevel(i);
            places[i] = i;
        }
        Bidi.reorderVisually(levels, 0, places, 0, count);
        StringBuilder drawn = new StringBuilder();
        for (int place : places) {
            String run = line.substring(bidi.getRunStart(place), bidi.getRunLimit(place));
            drawn.append(bidi.getRunLevel(place) % 2 == 0 ? run : turned(run));
        }
        return drawn.toString();
    }

    private static String turned(String run) {
        List<String> letters = new ArrayList<>();
        run.codePoints().forEach(codePoint -> {
            String letter = mirrored(codePoint);
            boolean mark = Character.getType(codePoint) == Character.NON_SPACING_MARK;
            if (mark && !letters.isEmpty()) {
                letters.set(letters.size() - 1, letters.get(letters.size() - 1) + letter);
            } else {
                letters.add(letter);
            }
        });
        StringBuilder turned = new StringBuilder();
        for (int i = letters.size() - 1; i >= 0; i--) {
            turned.append(letters.get(i));
        }
        return turned.toString();
    }

    private static String mirrored(int codePoint) {
        int at = OPEN.indexOf(codePoint);
        return at < 0 ? Character.toString(codePoint) : CLOSE.substring(at, at + 1);
    }
}
