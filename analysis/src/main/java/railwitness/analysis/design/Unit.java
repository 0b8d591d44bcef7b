package railwitness.analysis.design;

import java.util.Optional;

/**
 * The unit under test: table {@code [unit]}.
 *
 * @param name what it is, not empty
 * @param serial its serial number
 * @param condition as found, as left, or new
 * @param workDone what was repaired ({@code work_done})
 */
public record Unit(String name, Optional<String> serial, Optional<Condition> condition, Optional<String> workDone) {
    public Unit {
        Allowed.words("name", name);
    }

    /** The state in which the unit is tested. */
    public enum Condition {
        AS_FOUND("as found"),
        AS_LEFT("as left"),
        NEW("new");

        private final String word;

        Condition(String word) {
            this.word = word;
        }

        /** As written in the sheet and on the certificate. */
        public String word() {
            return word;
        }

        /** Finds a condition by its word; throws IllegalArgumentException naming those allowed. */
        public static Condition of(String word) {
            return SheetWord.find(values(), Condition::word, "condition", word);
        }
    }
}
