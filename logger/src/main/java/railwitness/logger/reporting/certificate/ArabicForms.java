package railwitness.logger.reporting.certificate;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.Map;

/**
 * Arabic letters in the form that their neighbours ask for: isolated, initial, medial or final, lam with alef as one sign.
 * Which letter has which forms is read from the names and decompositions of Unicode's presentation forms, so that no
 * table of ours can be wrong. The order of the letters stays as it was.
 */
final class ArabicForms {
    private static final int[][] BLOCKS = {{0xFB50, 0xFBFF}, {0xFE80, 0xFEFC}};
    private static final String[] NAMES = {" ISOLATED FORM", " FINAL FORM", " INITIAL FORM", " MEDIAL FORM"};
    private static final int ISOLATED = 0;
    private static final int FINAL = 1;
    private static final int INITIAL = 2;
    private static final int MEDIAL = 3;
    private static final int TATWEEL = 0x640;
    private static final Map<String, int[]> FORMS = forms();

    private ArabicForms() {}

    private static Map<String, int[]> forms() {
        Map<String, int[]> forms = new HashMap<>();
        for (int[] block : BLOCKS) {
            for (int codePoint = block[0]; codePoint <= block[1]; codePoint++) {
                String name = Character.isDefined(codePoint) ? Character.getName(codePoint) : "";
                String letters = Normalizer.normalize(Character.toString(codePoint), Normalizer.Form.NFKC);
                for (int form = 0; form < NAMES.length; form++) {
                    boolean alone = letters.length() == 1 || name.contains("LIGATURE LAM WITH ALEF");
                    if (alone && name.endsWith(NAMES[form])) {
                        forms.computeIfAbsent(letters, key -> new int[NAMES.length])[form] = codePoint;
                    }
                }
            }
        }
        return forms;
    }

    /** Whether it is a letter with forms. */
    static boolean isJoined(int codePoint) {
        return FORMS.containsKey(Character.toString(codePoint));
    }

    /** The letter standing alone. */
    static int isolated(int codePoint) {
        int[] forms = FORMS.get(Character.toString(codePoint));
        return forms[ISOLATED] == 0 ? codePoint : forms[ISOLATED];
    }

    static String of(String text) {
        if (text.codePoints().noneMatch(ArabicForms::isJoined)) {
            return text;
        }
        int[] all = text.codePoints().toArray();
        StringBuilder formed = new StringBuilder();
        for (int i = 0; i < all.length; i++) {
            int next = neighbour(all, i, 1);
            String pair = next < all.length && next == i + 1
                    ? Character.toString(all[i]) + Character.toString(all[next])
                    : "";
            boolean joinedBefore = joinsOn(all, neighbour(all, i, -1));
            if (FORMS.containsKey(pair)) {
                formed.appendCodePoint(FORMS.get(pair)[joinedBefore ? FINAL : ISOLATED]);
                i++;
            } else {
                boolean joinsNext = joinsOn(all, i) && next < all.length && joinsBack(all[next]);
                formed.appendCodePoint(form(all[i], joinedBefore, joinsNext));
            }
        }
        return formed.toString();
    }

    private static int form(int letter, boolean before, boolean after) {
        int[] forms = FORMS.get(Character.toString(letter));
        if (forms == null) {
            return letter;
        }
        int wanted = before && after ? MEDIAL : before ? FINAL : after ? INITIAL : ISOLATED;
        return forms[wanted] == 0 ? letter : forms[wanted];
    }

    /** The nearest letter in a direction; marks above and below letters do not part them. */
    private static int neighbour(int[] all, int from, int direction) {
        int at = from + direction;
        while (at >= 0 && at < all.length && Character.getType(all[at]) == Character.NON_SPACING_MARK) {
            at += direction;
        }
        return at;
    }

    /** Whether the letter there is joined to one behind it. */
    private static boolean joinsOn(int[] all, int at) {
        if (at < 0 || at >= all.length) {
            return false;
        }
        int[] forms = FORMS.get(Character.toString(all[at]));
        return all[at] == TATWEEL || forms != null && forms[INITIAL] != 0;
    }

    private static boolean joinsBack(int letter) {
        int[] forms = FORMS.get(Character.toString(letter));
        return letter == TATWEEL || forms != null && forms[FINAL] != 0;
    }
}
