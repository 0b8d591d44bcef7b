package railwitness.analysis.design;

import java.util.OptionalDouble;

/**
 * The input side: table {@code [input]}.
 *
 * @param nominalVolts V, above 0
 * @param lowestVolts lowest planned input, V; at most the nominal
 * @param highestVolts highest planned input, V; at least the nominal
 * @param highestAmperes highest input current by design, A
 * @param fuseAmperes rating of the fuse, A
 * @param capacitorMicrofarads input capacitor, uF
 * @param capacitorEsrOhms its equivalent series resistance, ohm ({@code capacitor_esr_ohm})
 * @param capacitorRatingVolts its voltage rating, V
 */
public record Input(
        double nominalVolts,
        OptionalDouble lowestVolts,
        OptionalDouble highestVolts,
        OptionalDouble highestAmperes,
        OptionalDouble fuseAmperes,
        OptionalDouble capacitorMicrofarads,
        OptionalDouble capacitorEsrOhms,
        OptionalDouble capacitorRatingVolts) {
    public Input {
        Allowed.positive("nominal_V", nominalVolts);
        Allowed.within("lowest_V", lowestVolts, 0, nominalVolts);
        highestVolts.ifPresent(volts -> Allowed.require(
                Double.isFinite(volts) && volts >= nominalVolts,
                "highest_V",
                volts,
                "must be at least nominal_V " + Allowed.text(nominalVolts)));
        Allowed.positive("highest_A", highestAmperes);
        Allowed.positive("fuse_A", fuseAmperes);
        Allowed.positive("capacitor_uF", capacitorMicrofarads);
        Allowed.notNegative("capacitor_esr_ohm", capacitorEsrOhms);
        Allowed.positive("capacitor_rating_V", capacitorRatingVolts);
    }

    /** An input of which only the nominal voltage is known, V. */
    public static Input of(double nominalVolts) {
        OptionalDouble unknown = OptionalDouble.empty();
        return new Input(nominalVolts, unknown, unknown, unknown, unknown, unknown, unknown, unknown);
    }
}
