package railwitness.drivers.reading;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * What a data sheet states of an instrument's error: parts of the reading, of the range, digits and a fixed offset. All
 * numbers are in the unit the instrument itself reads (volts for a meter on a shunt), percentages of it, zero or more.
 *
 * @param readingPct percent of the reading
 * @param rangePct percent of the range
 * @param digits count of the last digit
 * @param resolution worth of one digit
 * @param offset fixed part
 * @param readingPctPerDegC added for each degree outside of 18 to 28 degC (23 +- 5)
 * @param rangePctPerDegC the same, of the range
 * @param statedAs what the statement means
 */
public record Accuracy(
        double readingPct,
        double rangePct,
        double digits,
        double resolution,
        double offset,
        double readingPctPerDegC,
        double rangePctPerDegC,
        StatedAs statedAs) {
    private static final double COLDEST_DEGC = 18;
    private static final double WARMEST_DEGC = 28;

    /** What the maker promises. */
    public enum StatedAs {
        /** The error never lies outside. */
        LIMIT("limit"),
        /** The error lies inside with 95 % probability (coverage factor 2). */
        EXPANDED("95 %");

        private final String word;

        StatedAs(String word) {
            this.word = word;
        }

        /** As written in a sheet. */
        public String word() {
            return word;
        }
    }

    public Accuracy {
        notNegative("reading_pct", readingPct);
        notNegative("range_pct", rangePct);
        notNegative("digits", digits);
        notNegative("resolution", resolution);
        notNegative("offset", offset);
        notNegative("reading_pct_per_degC", readingPctPerDegC);
        notNegative("range_pct_per_degC", rangePctPerDegC);
    }

    private static void notNegative(String what, double value) {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException("accuracy " + what + " " + value + " must be zero or more");
        }
    }

    /** A limit of so many percent of reading and of range, and a fixed part. */
    public static Accuracy limit(double readingPct, double rangePct, double offset) {
        return new Accuracy(readingPct, rangePct, 0, 0, offset, 0, 0, StatedAs.LIMIT);
    }

    /** Half the width of the band around this reading, in the unit the instrument reads. */
    public double halfWidthAt(double reading, double range, double ambientDegC) {
        return gainHalfWidth(reading, ambientDegC) + fixedHalfWidth(range, ambientDegC);
    }

    /** The part that grows with the reading. */
    public double gainHalfWidth(double reading, double ambientDegC) {
        return (readingPct + readingPctPerDegC * degreesOutside(ambientDegC)) / 100 * Math.abs(reading);
    }

    /** The part that is the same all over a range. */
    public double fixedHalfWidth(double range, double ambientDegC) {
        double ofRange = (rangePct + rangePctPerDegC * degreesOutside(ambientDegC)) / 100 * Math.abs(range);
        return ofRange + digits * resolution + offset;
    }

    private static double degreesOutside(double ambientDegC) {
        return Math.max(0, Math.max(COLDEST_DEGC - ambientDegC, ambientDegC - WARMEST_DEGC));
    }

    /** As a data sheet writes it: {@code +-(0.015 % of reading + 0.004 % of range), limit}. */
    public String words() {
        List<String> parts = new ArrayList<>();
        part(parts, readingPct, "% of reading");
        part(parts, rangePct, "% of range");
        part(parts, digits, "digits of " + text(resolution));
        part(parts, offset, "fixed");
        return "+-(" + String.join(" + ", parts) + "), " + statedAs.word();
    }

    private static void part(List<String> parts, double value, String words) {
        if (value != 0) {
            parts.add(text(value) + " " + words);
        }
    }

    private static String text(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
