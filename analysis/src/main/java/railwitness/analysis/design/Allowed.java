package railwitness.analysis.design;

import java.util.Locale;
import java.util.OptionalDouble;

/** Refuses a value of the sheet with its key, the value and what is allowed. */
final class Allowed {
    private Allowed() {}

    static void positive(String key, double value) {
        require(Double.isFinite(value) && value > 0, key, value, "must be above 0");
    }

    static void positive(String key, OptionalDouble value) {
        value.ifPresent(number -> positive(key, number));
    }

    static void notNegative(String key, OptionalDouble value) {
        value.ifPresent(number -> require(Double.isFinite(number) && number >= 0, key, number, "must be 0 or more"));
    }

    static void finite(String key, OptionalDouble value) {
        value.ifPresent(number -> require(Double.isFinite(number), key, number, "must be a finite number"));
    }

    /** The value must lie in (low, high]. */
    static void within(String key, OptionalDouble value, double low, double high) {
        value.ifPresent(number -> require(
                number > low && number <= high, key, number, "must be above " + text(low) + ", at most " + text(high)));
    }

    static void count(String key, int value, int lowest) {
        if (value < lowest) {
            throw new IllegalArgumentException(key + " " + value + " must be a whole number, at least " + lowest);
        }
    }

    static void words(String key, String value) {
        if (value == null || value.isBlank()) {
            throw new IllegalArgumentException(key + " must not be empty");
        }
    }

    static void require(boolean holds, String key, double value, String allowed) {
        if (!holds) {
            throw new IllegalArgumentException(key + " " + text(value) + " " + allowed);
        }
    }

    static String text(double value) {
        String plain = String.format(Locale.ROOT, "%.6g", value);
        return plain.contains(".") && !plain.contains("e")
                ? plain.replaceAll("0+$", "").replaceAll("\\.$", "")
                : plain;
    }
}
