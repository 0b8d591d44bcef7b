package railwitness.drivers.sheet;

import java.math.BigDecimal;

/** Words for ranges of numbers. */
final class Bounds {
    private Bounds() {}

    static String between(double lowest, double highest, String unit) {
        return plain(lowest) + " to " + plain(highest) + unit(unit);
    }

    static String one(String word, double bound, String unit) {
        return word + " " + plain(bound) + unit(unit);
    }

    private static String unit(String unit) {
        return unit.isEmpty() ? "" : " " + unit;
    }

    /** 60 rather than 60.0, 0.001 rather than 1.0E-3. */
    static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
