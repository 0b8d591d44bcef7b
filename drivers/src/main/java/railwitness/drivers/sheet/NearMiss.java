package railwitness.drivers.sheet;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;

/** Finds the known key that was probably meant. */
final class NearMiss {
    private NearMiss() {}

    static String words(String key, Collection<String> known) {
        String nearest = known.stream()
                .min(Comparator.comparing(candidate -> distance(key, candidate)))
                .orElse("");
        if (!nearest.isEmpty() && distance(key, nearest) <= Math.max(2, key.length() / 3)) {
            return "; did you mean " + nearest + "?";
        }
        return known.isEmpty() ? "" : "; known are " + String.join(", ", known);
    }

    /** Levenshtein's distance, letters of either case taken as equal. */
    static int distance(String one, String other) {
        String a = one.toLowerCase(Locale.ROOT);
        String b = other.toLowerCase(Locale.ROOT);
        int[] row = new int[b.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, Math.min(row[j], row[j - 1]) + 1);
            }
        }
        return row[b.length()];
    }
}
