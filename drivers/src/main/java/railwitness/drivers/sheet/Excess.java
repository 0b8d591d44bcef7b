package railwitness.drivers.sheet;

import java.util.Optional;
import org.tomlj.TomlArray;

/** What no sheet can mean, whatever its key: sizes that are no unit's, texts that are no name, lists without end. */
final class Excess {
    private static final double LARGEST = 1e12;
    private static final double SMALLEST = 1e-15;
    private static final int LONGEST = 500;
    private static final int MOST = 200;

    private Excess() {}

    /** Why a value is refused; empty where nothing is too much. */
    static Optional<String> in(Object value) {
        if (value instanceof Number number) {
            double size = Math.abs(number.doubleValue());
            return when(size > LARGEST, "is beyond every size here: must be 1e12 at most")
                    .or(() -> when(
                            size > 0 && size < SMALLEST, "is below every size here: must be zero, or 1e-15 at least"));
        }
        if (value instanceof String text) {
            return when(text.length() > LONGEST, "is too long: must have " + LONGEST + " characters at most");
        }
        if (value instanceof TomlArray array) {
            return when(array.size() > MOST, "is too long: must have " + MOST + " items at most")
                    .or(() -> array.toList().stream()
                            .flatMap(item -> in(item).stream())
                            .findFirst());
        }
        return Optional.empty();
    }

    private static Optional<String> when(boolean excess, String words) {
        return excess ? Optional.of(words) : Optional.empty();
    }
}
