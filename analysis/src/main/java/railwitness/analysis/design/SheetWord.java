package railwitness.analysis.design;

import java.util.Arrays;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Finds a word of the sheet among those allowed. */
final class SheetWord {
    private SheetWord() {}

    static <T> T find(T[] all, Function<T, String> word, String key, String wanted) {
        return Arrays.stream(all)
                .filter(one -> word.apply(one).equals(wanted))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(key + " '" + wanted + "' must be one of: "
                        + Arrays.stream(all).map(word).collect(Collectors.joining(", "))));
    }
}
