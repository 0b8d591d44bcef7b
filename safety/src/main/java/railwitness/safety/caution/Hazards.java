package railwitness.safety.caution;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import railwitness.drivers.bench.Source;

/**
 * What can hurt at this unit in this plan, in plain SI numbers.
 *
 * @param betweenVolts voltage between the outermost rails without load at the highest input of the plan, V
 * @param railVolts largest magnitude of one rail at the same point, V
 * @param capacitorFarads filter capacitors of one rail, F
 * @param capacitorRatingVolts their rating, V
 * @param storedJoules energy of all filter capacitors at that point, J
 * @param inputVolts highest input of the plan, V
 * @param inputCapacitorRatingVolts rating of the capacitors at the input, where known, V
 * @param inputAmps highest input current, A
 * @param fuseAmps fuse at the unit's input; empty when there is none
 * @param hottestDegC temperature that a part may reach, degC
 * @param earthedOrJoined terminals of instruments that are earthed or joined, in words
 * @param contactorReadBack true when a contactor in the unit's feed is driven and its opening is read back
 * @param touchVolts touch limit of the design, V
 */
public record Hazards(
        double betweenVolts,
        double railVolts,
        double capacitorFarads,
        double capacitorRatingVolts,
        double storedJoules,
        double inputVolts,
        OptionalDouble inputCapacitorRatingVolts,
        double inputAmps,
        OptionalDouble fuseAmps,
        double hottestDegC,
        List<String> earthedOrJoined,
        Source source,
        boolean contactorReadBack,
        double touchVolts) {
    public Hazards {
        earthedOrJoined = List.copyOf(earthedOrJoined);
        notNegative("voltage between the rails", betweenVolts, "V");
        notNegative("rail voltage", railVolts, "V");
        notNegative("capacitors", capacitorFarads, "F");
        notNegative("capacitor rating", capacitorRatingVolts, "V");
        notNegative("stored energy", storedJoules, "J");
        notNegative("input voltage", inputVolts, "V");
        notNegative("input current", inputAmps, "A");
        notNegative("touch limit", touchVolts, "V");
    }

    private static void notNegative(String what, double value, String unit) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    String.format(Locale.ROOT, "%s %s %s must be zero or more", what, value, unit));
        }
    }

    /** Energy of a capacitor, {@code W = C V^2 / 2}, J. */
    public static double joules(double farads, double volts) {
        return farads * volts * volts / 2;
    }
}
