package railwitness.logger.reporting.exporting;

import java.math.BigDecimal;
import java.math.MathContext;

/** The shortest decimal text that reads back as the very same number; {@link Double#toString} of Java 17 is not always it. */
final class ShortestNumber {
    private static final int MOST_DIGITS = 17;
    private static final int MOST_ZEROS = 4;

    private ShortestNumber() {}

    static String of(double value) {
        if (value == 0 || !Double.isFinite(value)) {
            return value == 0 ? (1 / value < 0 ? "-0" : "0") : Double.toString(value);
        }
        BigDecimal exact = new BigDecimal(value);
        for (int digits = 1; digits <= MOST_DIGITS; digits++) {
            BigDecimal rounded = exact.round(new MathContext(digits));
            if (rounded.doubleValue() == value) {
                return text(rounded.stripTrailingZeros());
            }
        }
        return Double.toString(value);
    }

    private static String text(BigDecimal number) {
        int magnitude = number.precision() - number.scale() - 1;
        if (magnitude >= -MOST_ZEROS && magnitude < MOST_DIGITS) {
            return number.toPlainString();
        }
        String digits = number.unscaledValue().abs().toString();
        return (number.signum() < 0 ? "-" : "")
                + digits.charAt(0)
                + (digits.length() > 1 ? "." + digits.substring(1) : "")
                + "E" + magnitude;
    }
}
