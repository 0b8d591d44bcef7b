package railwitness.logger.ui.screen.form;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;
import java.util.OptionalDouble;
import railwitness.logger.ui.screen.widgets.Numbers;

/**
 * A number as people write it at the bench, in the unit of the field it is typed into: 4u7 is 4.7 where \u00b5F are asked
 * for, 250k is 250000 where Hz are, 22m is 0.022 where ohms are. How numbers are written is known to {@link
 * railwitness.logger.text.TypedNumber}; here stands only what is the field's own.
 */
final class TypedNumber {
    private static final Map<String, Integer> PREFIXES = Map.of("p", -12, "n", -9, "u", -6, "m", -3, "k", 3);
    private static final MathContext DIGITS = new MathContext(15);

    private TypedNumber() {}

    /**
     * The number in the field's unit; empty when it is none.
     *
     * @param unit of the field, as the sheet writes it: uF, Hz, ohm, mm2
     * @param percent the field shows a share in per cent
     */
    static OptionalDouble of(String typed, String unit, boolean percent) {
        String text = typed.strip();
        boolean share = text.endsWith("%");
        if (share && !percent && !unit.isEmpty() && !unit.equals("1")) {
            return OptionalDouble.empty();
        }
        String bare = share ? text.substring(0, text.length() - 1).strip() : without(text, unit);
        OptionalDouble plain = Numbers.parsed(bare.replace('\u2212', '-'));
        int shift = percent || share ? -2 : 0;
        if (plain.isPresent()) {
            return scaled(plain.getAsDouble(), shift);
        }
        int own = own(unit);
        String base = own == 0 ? unit : unit.substring(1);
        return railwitness.logger.text.TypedNumber.of(bare, base.equals("1") ? "" : base)
                .map(number -> scaled(number.value(), shift - own))
                .orElse(OptionalDouble.empty());
    }

    /** Without the field's own unit behind it, such as mm2 or \u00b0C. */
    private static String without(String text, String unit) {
        String shown = unit.replace("mm2", "mm\u00b2").replace("degC", "\u00b0C");
        for (String own : new String[] {unit, shown, "rms"}) {
            if (!own.isEmpty() && text.endsWith(own) && (own.length() > 1 || unit.equals(own))) {
                return text.substring(0, text.length() - own.length()).strip();
            }
        }
        return text;
    }

    /** The power of ten in the field's own unit, such as -6 of uF. */
    private static int own(String unit) {
        return unit.matches("[pnumk](F|H|V|A|W|ohm|Hz|s).*") ? PREFIXES.get(unit.substring(0, 1)) : 0;
    }

    private static OptionalDouble scaled(double value, int power) {
        return OptionalDouble.of(
                BigDecimal.valueOf(value).scaleByPowerOfTen(power).round(DIGITS).doubleValue());
    }
}
