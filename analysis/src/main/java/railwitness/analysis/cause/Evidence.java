package railwitness.analysis.cause;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What else was measured when a first power ended: it speaks for or against what the input current alone suggests.
 *
 * @param railVolts rails as they were last read, with their signs, V; empty where none was read
 * @param railsStand whether all of them were where they should be
 * @param boundKnown whether the sheet itself gives the bound that was passed; where it does not, a current beyond it is
 *     no sign of a fault
 * @param limiting whether the supply limited its current
 * @param blocked whether the unit had been fed with its remote turn-on off, and took no more than it should
 */
public record Evidence(
        Map<String, Double> railVolts, boolean railsStand, boolean boundKnown, boolean limiting, boolean blocked) {
    public Evidence {
        railVolts = Collections.unmodifiableMap(new LinkedHashMap<>(railVolts));
    }

    /** Of a unit whose switches were seen to block. */
    public Evidence(Map<String, Double> railVolts, boolean railsStand, boolean boundKnown, boolean limiting) {
        this(railVolts, railsStand, boundKnown, limiting, true);
    }

    /** The same of a unit that was turned on without a look at its current before. */
    public Evidence notSeenToBlock() {
        return new Evidence(railVolts, railsStand, boundKnown, limiting, false);
    }

    /** Nothing else is known, and the bound is the sheet's. */
    public static Evidence none() {
        return new Evidence(Map.of(), false, true, false);
    }
}
