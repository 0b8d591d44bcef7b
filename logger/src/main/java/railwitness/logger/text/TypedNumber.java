package railwitness.logger.text;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as people write it at a bench: {@code 12.6}, {@code 10,5}, {@code 250k}, {@code 2k2}, {@code 4u7},
 * {@code 350 mA}, {@code 0R1}. A letter in the place of the point is the component code of IEC 60062; a single comma is a
 * decimal comma, never a mark of thousands.
 *
 * @param value in the unit without prefix
 * @param resolution worth of its last digit, in the same unit
 */
public record TypedNumber(double value, double resolution) {
    /** Powers of ten of the prefixes of the SI that a bench needs; K is taken for k. */
    private static final Map<String, Integer> PREFIXES =
            Map.of("p", -12, "n", -9, "u", -6, "m", -3, "", 0, "k", 3, "K", 3, "M", 6, "G", 9);

    private static final Map<String, String> UNITS = Map.of("ohm", "ohm|Ohm|OHM|R|", "degC", "degC|C|");
    private static final Pattern CODED = Pattern.compile("([-+]?)(\\d+)([RpnumkKMG])(\\d+)");
    private static final Pattern PLAIN =
            Pattern.compile("([-+]?(?:\\d+[.,]?\\d*|[.,]\\d+)(?:[eE][-+]?\\d{1,2})?)\\s*([pnumkKMG]?)(.*)");

    /** Longer ones are no numbers of a bench. */
    private static final int LONGEST = 40;

    /**
     * Reads what was typed; empty when it is no number in this unit.
     *
     * @param unit symbol that may stand behind it, such as V, A, ohm or degC; empty for none
     */
    public static Optional<TypedNumber> of(String text, String unit) {
        String typed = plain(text);
        if (typed.length() > LONGEST) {
            return Optional.empty();
        }
        String own = UNITS.getOrDefault(unit, Pattern.quote(unit) + "|");
        Matcher coded = CODED.matcher(without(typed, unit));
        if (coded.matches()) {
            String prefix = coded.group(3).equals("R") ? "" : coded.group(3);
            boolean fits = !coded.group(3).equals("R") || unit.equals("ohm") || unit.isEmpty();
            return fits
                    ? number(coded.group(1) + coded.group(2) + "." + coded.group(4), PREFIXES.get(prefix))
                    : Optional.empty();
        }
        Matcher plain = PLAIN.matcher(typed);
        if (!plain.matches() || !plain.group(3).matches(own)) {
            return Optional.empty();
        }
        return number(plain.group(1).replace(',', '.'), PREFIXES.get(plain.group(2)));
    }

    private static String without(String typed, String unit) {
        return !unit.isEmpty() && typed.endsWith(unit)
                ? typed.substring(0, typed.length() - unit.length()).strip()
                : typed;
    }

    /** One way to write minus, micro, ohm and degree. */
    private static String plain(String text) {
        return text.strip()
                .replace('\u2212', '-')
                .replace('\u2013', '-')
                .replaceAll("[\u00b5\u03bc]", "u")
                .replaceAll("[\u2126\u03a9\u03c9]", "ohm")
                .replaceAll("\u00b0\\s*C", "degC")
                .replaceAll("[\u00a0\u2009\u202f]", " ");
    }

    private static Optional<TypedNumber> number(String digits, int power) {
        try {
            BigDecimal exact = new BigDecimal(digits.toLowerCase(Locale.ROOT)).scaleByPowerOfTen(power);
            double last = BigDecimal.ONE.scaleByPowerOfTen(-exact.scale()).doubleValue();
            return Optional.of(new TypedNumber(exact.doubleValue(), last));
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }
}
