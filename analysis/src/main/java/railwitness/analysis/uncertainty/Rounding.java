package railwitness.analysis.uncertainty;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A result as the GUM prints it (7.2.6): uncertainty to two digits, value to the same place. For print only, last of
 * all; never calculate with it.
 *
 * @param value rounded to the place of the uncertainty; as it is where the uncertainty is 0
 * @param uncertainty rounded to two digits
 */
public record Rounding(BigDecimal value, BigDecimal uncertainty) {
    private static final int DIGITS = 2;

    /** @param uncertainty u or U, 0 or more, in the unit of the value */
    public static Rounding of(double value, double uncertainty) {
        BigDecimal exact = BigDecimal.valueOf(Arguments.unlessFinite("value to print", value));
        if (Arguments.unlessNotNegative("uncertainty to print", uncertainty) == 0) {
            return new Rounding(whole(exact), BigDecimal.ZERO);
        }
        BigDecimal rounded = BigDecimal.valueOf(uncertainty).round(new MathContext(DIGITS, RoundingMode.HALF_UP));
        if (rounded.precision() < DIGITS) {
            rounded = rounded.setScale(rounded.scale() + DIGITS - rounded.precision(), RoundingMode.UNNECESSARY);
        }
        return new Rounding(exact.setScale(rounded.scale(), RoundingMode.HALF_UP), rounded);
    }

    /** A count is printed as one: 3, not 3.0. */
    private static BigDecimal whole(BigDecimal exact) {
        return exact.stripTrailingZeros().scale() <= 0 ? exact.setScale(0, RoundingMode.UNNECESSARY) : exact;
    }

    /** The value with its standard uncertainty u. */
    public static Rounding standard(Estimate estimate) {
        return of(estimate.value(), estimate.u());
    }

    /** The value with its expanded uncertainty U. */
    public static Rounding expanded(Estimate estimate, Coverage coverage) {
        return of(estimate.value(), coverage.expanded());
    }

    /** Plain digits, no exponent. */
    public String valueText() {
        return value.toPlainString();
    }

    /** Plain digits, no exponent. */
    public String uncertaintyText() {
        return uncertainty.toPlainString();
    }

    /** Such as "35.02 +- 0.11". */
    @Override
    public String toString() {
        return valueText() + " +- " + uncertaintyText();
    }
}
