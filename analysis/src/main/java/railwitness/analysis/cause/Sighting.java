package railwitness.analysis.cause;

import java.util.Locale;
import java.util.Optional;

/**
 * One thing measured, as the fit sees it.
 *
 * @param kind what
 * @param rail its index, -1 where it is of none
 * @param railName its name
 * @param point index of the point, -1 where it is of none
 * @param step what the plan calls that point
 * @param value natural logarithm of the magnitude; of a {@link Kind#STANDBY} or {@link Kind#SOURCE} itself
 * @param sigma standard uncertainty of that: the measurement's and the model's own at this point
 */
record Sighting(Kind kind, int rail, Optional<String> railName, int point, String step, double value, double sigma) {
    enum Kind {
        VOLTS("rail", "V"),
        RIPPLE("ripple", "V"),
        LOSS("loss", "W"),
        STANDBY("standby current", "A"),
        SOURCE("resistance from the source to the terminals", "ohm"),
        /** What the sheet calls nominal: a sound unit of these parts gives about that at full load. */
        NOMINAL("nominal rail", "V");

        private final String words;
        private final String unit;

        Kind(String words, String unit) {
            this.words = words;
            this.unit = unit;
        }

        boolean logarithmic() {
            return this == VOLTS || this == RIPPLE || this == LOSS || this == NOMINAL;
        }
    }

    /** Measured, and what is to be expected, in words. */
    String words(double expected) {
        String subject = kind == Kind.VOLTS
                ? railName.orElse("") + " rail"
                : kind.words + railName.map(name -> " of " + name).orElse("");
        String where = step.isEmpty() ? "" : " at " + step;
        return String.format(
                Locale.ROOT,
                "%s%s: %.3g %s, expected %.3g %s",
                subject,
                where,
                natural(value),
                kind.unit,
                natural(expected),
                kind.unit);
    }

    private double natural(double number) {
        return kind.logarithmic() ? Math.exp(number) : number;
    }
}
