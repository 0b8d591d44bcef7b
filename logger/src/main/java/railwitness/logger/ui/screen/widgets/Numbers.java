package railwitness.logger.ui.screen.widgets;

import java.math.BigDecimal;
import java.text.DecimalFormat;
import java.text.NumberFormat;
import java.text.ParsePosition;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Numbers as the person at the screen reads and writes them: their locale, a true minus sign. */
public final class Numbers {
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);
    private static final String MINUS = "\u2212";

    /** Each thread its own: a format may not be shared. */
    private static final ThreadLocal<Formats> FORMATS = ThreadLocal.withInitial(Formats::new);

    private Numbers() {}

    /** The formats of the locale for which they were last asked, by places. */
    private static final class Formats {
        private final Map<Integer, NumberFormat> made = new HashMap<>();
        private Locale locale = Locale.ROOT;

        NumberFormat with(int places) {
            Locale present = Locale.getDefault(Locale.Category.FORMAT);
            if (!present.equals(locale)) {
                made.clear();
                locale = present;
            }
            return made.computeIfAbsent(places, this::format);
        }

        private NumberFormat format(int places) {
            NumberFormat format = NumberFormat.getNumberInstance(locale);
            format.setGroupingUsed(false);
            format.setMinimumFractionDigits(places);
            format.setMaximumFractionDigits(places);
            format.setRoundingMode(java.math.RoundingMode.HALF_UP);
            return format;
        }
    }

    /** A number with so many places. */
    public static String fixed(double value, int places) {
        String text = FORMATS.get().with(places).format(value);
        boolean zero = text.chars().noneMatch(c -> c >= '1' && c <= '9');
        return zero ? text.replace("-", "").replace(MINUS, "") : text.replace("-", MINUS);
    }

    /** A number with so many digits that count. */
    public static String significant(double value, int digits) {
        BigDecimal rounded = BigDecimal.valueOf(value).round(new java.math.MathContext(digits));
        return of(rounded.scale() < 0 ? rounded.setScale(0) : rounded);
    }

    /** A number as it was rounded elsewhere. */
    public static String of(BigDecimal value) {
        return fixed(value.doubleValue(), Math.max(0, value.scale()));
    }

    /** A number as it stands on a sheet, without trailing zeros. */
    public static String plain(double value) {
        BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
        return of(exact.scale() < 0 ? exact.setScale(0) : exact);
    }

    /** What a person typed, by their locale or with a point; empty when it is no number. */
    public static OptionalDouble parsed(String text) {
        String typed = text.strip().replace(MINUS, "-");
        ParsePosition at = new ParsePosition(0);
        DecimalFormat format =
                (DecimalFormat) NumberFormat.getNumberInstance(Locale.getDefault(Locale.Category.FORMAT));
        format.setGroupingUsed(false);
        Number number = format.parse(typed, at);
        if (number != null && at.getIndex() == typed.length() && Double.isFinite(number.doubleValue())) {
            return OptionalDouble.of(number.doubleValue());
        }
        try {
            double value = Double.parseDouble(typed.matches("[-+]?\\d+,\\d+") ? typed.replace(',', '.') : typed);
            return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }

    /** A moment by the clock of the bench, one rule everywhere: year, month, day, hour and minute. */
    public static String moment(Instant at, ZoneId zone) {
        return MOMENT.withZone(zone).format(at);
    }

    /** A time span in words: 40 s, 5 min 20 s, 3 h 10 min. */
    public static String span(Duration time) {
        long seconds = Math.max(0, (time.toMillis() + 500) / 1000);
        if (seconds < 60) {
            return seconds + " s";
        }
        if (seconds < 3600) {
            return seconds / 60 + " min" + (seconds % 60 == 0 ? "" : " " + seconds % 60 + " s");
        }
        return seconds / 3600 + " h " + seconds % 3600 / 60 + " min";
    }
}
