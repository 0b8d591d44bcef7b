package railwitness.drivers.scpi;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.regex.Matcher;

/**
 * A numeric response: NR1, NR2 or NR3 of IEEE 488.2, or one of the values by which SCPI-1999 says that there is no
 * number. Not-a-number is told from infinity first, as they differ by a tenth of a percent only.
 */
public sealed interface Numeric {
    /** 9.9E37. */
    double INFINITY = 9.9e37;
    /** 9.91E37. */
    double NOT_A_NUMBER = 9.91e37;

    /** No number of an instrument is written longer. */
    int LONGEST = 64;

    /** An ordinary number. */
    record Value(double value) implements Numeric {}

    /** Beyond the range. */
    record Infinite(boolean negative) implements Numeric {}

    /** No result. */
    record Nothing() implements Numeric {}

    /**
     * Reads a response. Tolerant of a plus sign, spaces around and before the exponent, a unit at the end, and the words
     * INF, NINF and NAN.
     *
     * @throws IllegalArgumentException when it is no number
     */
    static Numeric of(String text) {
        if (text.length() > LONGEST) {
            throw new IllegalArgumentException("a reply of " + text.length() + " characters is no number");
        }
        String word = text.strip().toUpperCase(Locale.ROOT);
        Matcher matcher = Form.NUMBER.matcher(word);
        if (matcher.matches()) {
            return ofNumber(Double.parseDouble(matcher.group(1).replace(" ", "")));
        }
        return switch (word) {
            case "INF", "+INF", "INFINITY" -> new Infinite(false);
            case "NINF", "-INF", "NINFINITY" -> new Infinite(true);
            case "NAN" -> new Nothing();
            default -> throw new IllegalArgumentException("'" + text + "' is not a number");
        };
    }

    private static Numeric ofNumber(double value) {
        double magnitude = Math.abs(value);
        if (Math.abs(magnitude - NOT_A_NUMBER) < 0.004e37) {
            return new Nothing();
        }
        return magnitude > 0.999 * INFINITY ? new Infinite(value < 0) : new Value(value);
    }

    /**
     * The shortest text that says this number to nine digits: NR2 where it is short, else NR3.
     *
     * @throws IllegalArgumentException when it is not finite
     */
    static String write(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("only finite numbers can be sent, not " + value);
        }
        BigDecimal rounded = BigDecimal.valueOf(value).round(new MathContext(9)).stripTrailingZeros();
        if (rounded.signum() == 0) {
            return "0";
        }
        int exponent = rounded.precision() - rounded.scale() - 1;
        return exponent >= -6 && exponent < 9 ? rounded.toPlainString() : rounded.toString();
    }
}
