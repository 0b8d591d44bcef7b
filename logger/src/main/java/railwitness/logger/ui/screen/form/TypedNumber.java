package railwitness.logger.ui.screen.form;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.logger.ui.screen.widgets.Numbers;

/**
 * A number as people write it at the bench: 10,5 or 10.5, 250k, 4u7, 33 m\u03a9, 80 %. A prefix counts against the unit of
 * the field: 4u7 is 4.7 where \u00b5F are asked for, 250k is 250000 where Hz are, 22m is 0.022 where ohms are.
 */
final class TypedNumber {
    private static final Map<String, Integer> PREFIXES =
            Map.of("p", -12, "n", -9, "u", -6, "\u00b5", -6, "\u03bc", -6, "m", -3, "k", 3, "K", 3, "M", 6);
    private static final Pattern WHOLE = Pattern.compile("([-+]?\\d+(?:[.,]\\d+)?)\\s*([pnu\u00b5\u03bcmkKM]?)"
            + "\\s*(ohm|\u03a9|Ohm|R|V|A|W|F|H|Hz|T|s|K|\u00b0C|mm2|mm\u00b2|%|rms)?");
    private static final Pattern BETWEEN =
            Pattern.compile("([-+]?\\d+)([pnu\u00b5\u03bcmkKMR])(\\d+)\\s*" + "(ohm|\u03a9|V|A|W|F|H|Hz|T|s)?");
    private static final MathContext DIGITS = new MathContext(15);

    private TypedNumber() {}

    /**
     * The number in the field's unit; empty when it is none.
     *
     * @param unit of the field, as the sheet writes it: uF, Hz, ohm
     * @param percent the field shows a share in per cent
     */
    static OptionalDouble of(String typed, String unit, boolean percent) {
        String text = typed.strip().replace('\u2212', '-');
        OptionalDouble plain = Numbers.parsed(text);
        if (plain.isPresent()) {
            return scaled(BigDecimal.valueOf(plain.getAsDouble()), percent ? -2 : 0);
        }
        Matcher between = BETWEEN.matcher(text);
        if (between.matches()) {
            BigDecimal value = new BigDecimal(between.group(1) + "." + between.group(3));
            int prefix = PREFIXES.getOrDefault(between.group(2), 0);
            return scaled(value, prefix - own(unit));
        }
        Matcher whole = WHOLE.matcher(text);
        if (!whole.matches()) {
            return OptionalDouble.empty();
        }
        BigDecimal value = new BigDecimal(whole.group(1).replace(',', '.'));
        Optional<String> written = Optional.ofNullable(whole.group(3));
        if (written.filter("%"::equals).isPresent()) {
            return percent || unit.isEmpty() || unit.equals("1") ? scaled(value, -2) : OptionalDouble.empty();
        }
        if (whole.group(2).isEmpty()) {
            boolean counts = written.isPresent() && own(unit) != 0 && !unit.startsWith("mm");
            return scaled(value, (percent ? -2 : 0) - (counts ? own(unit) : 0));
        }
        return scaled(value, PREFIXES.get(whole.group(2)) - own(unit) - (percent ? 2 : 0));
    }

    /** The power of ten in the field's own unit, such as -6 of uF. */
    private static int own(String unit) {
        boolean prefixed = unit.length() > 1 && unit.matches("[pnum\u00b5k](F|H|V|A|W|ohm|Hz|\u03a9|s).*");
        return prefixed ? PREFIXES.get(unit.substring(0, 1)) : 0;
    }

    private static OptionalDouble scaled(BigDecimal value, int power) {
        return OptionalDouble.of(value.scaleByPowerOfTen(power).round(DIGITS).doubleValue());
    }
}
