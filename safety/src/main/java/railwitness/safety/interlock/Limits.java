package railwitness.safety.interlock;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/**
 * A closed span of allowed values, in the SI unit of what is watched.
 *
 * @param low lowest allowed value; minus infinity when there is none
 * @param high highest allowed value; plus infinity when there is none
 */
public record Limits(double low, double high) {
    public Limits {
        if (!(low <= high)) {
            throw new IllegalArgumentException(
                    "limits " + low + " to " + high + " must be numbers, low not above high");
        }
    }

    /** Nothing is outside; only silence trips. */
    public static Limits open() {
        return new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    public static Limits atMost(double high) {
        return new Limits(Double.NEGATIVE_INFINITY, high);
    }

    public static Limits atLeast(double low) {
        return new Limits(low, Double.POSITIVE_INFINITY);
    }

    public static Limits between(double low, double high) {
        return new Limits(low, high);
    }

    /** True when the value is allowed; never for not-a-number. */
    public boolean hold(double value) {
        return value >= low && value <= high;
    }

    /** True when there is neither a low nor a high limit. */
    public boolean isOpen() {
        return low == Double.NEGATIVE_INFINITY && high == Double.POSITIVE_INFINITY;
    }

    /** In words, such as {@code at most 29 A}. */
    public String words(String unit) {
        if (isOpen()) {
            return "any";
        }
        if (low == Double.NEGATIVE_INFINITY) {
            return "at most " + number(high) + " " + unit;
        }
        return high == Double.POSITIVE_INFINITY
                ? "at least " + number(low) + " " + unit
                : number(low) + " to " + number(high) + " " + unit;
    }

    static String number(double value) {
        return value == 0 || !Double.isFinite(value)
                ? String.format(Locale.ROOT, "%.0f", value)
                : BigDecimal.valueOf(value)
                        .round(new MathContext(4))
                        .stripTrailingZeros()
                        .toPlainString();
    }
}
