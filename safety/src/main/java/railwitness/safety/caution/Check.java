package railwitness.safety.caution;

import java.util.Locale;
import java.util.OptionalDouble;

/**
 * One thing to do before power.
 *
 * @param leastOhms for a cold resistance that is to be measured, the least it may be, ohm; empty for what is only
 *     confirmed
 */
public record Check(String text, OptionalDouble leastOhms) {
    /** Something the person confirms. */
    public static Check confirm(String text) {
        return new Check(text, OptionalDouble.empty());
    }

    /** A cold resistance, measured with the unit disconnected and its capacitors discharged. */
    public static Check resistance(String where, double leastOhms) {
        if (!(leastOhms > 0)) {
            throw new IllegalArgumentException(
                    "least resistance of " + where + " must be above zero, not " + leastOhms);
        }
        return new Check("Cold resistance, " + where, OptionalDouble.of(leastOhms));
    }

    /** It must be confirmed on every run; a resistance is taken where the person can. */
    public boolean isRequired() {
        return leastOhms.isEmpty();
    }

    /** What speaks against power in this value, or an empty text. */
    String against(double ohms) {
        return ohms >= leastOhms.orElse(0)
                ? ""
                : String.format(
                        Locale.ROOT,
                        "%s is %.4g ohm, it must be at least %.4g ohm: find the cause before power",
                        text,
                        ohms,
                        leastOhms.orElse(0));
    }
}
