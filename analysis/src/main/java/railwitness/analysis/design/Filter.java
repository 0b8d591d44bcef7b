package railwitness.analysis.design;

import java.util.OptionalDouble;

/**
 * The filter of each rail: table {@code [filter]}.
 *
 * @param capacitorMicrofarads uF per rail
 * @param capacitorEsrOhms equivalent series resistance of them together, ohm
 * @param capacitorRatingVolts V
 * @param bleederOhms resistor that empties the capacitors, ohm
 * @param chokeMicrohenries series choke of a rail, uH ({@code choke_uH}); with capacitor input a small one may be there
 * @param chokeResistanceOhms its resistance, ohm ({@code choke_resistance_ohm})
 */
public record Filter(
        OptionalDouble capacitorMicrofarads,
        OptionalDouble capacitorEsrOhms,
        OptionalDouble capacitorRatingVolts,
        OptionalDouble bleederOhms,
        OptionalDouble chokeMicrohenries,
        OptionalDouble chokeResistanceOhms) {
    public Filter {
        Allowed.positive("capacitor_uF", capacitorMicrofarads);
        Allowed.notNegative("capacitor_esr_ohm", capacitorEsrOhms);
        Allowed.positive("capacitor_rating_V", capacitorRatingVolts);
        Allowed.positive("bleeder_ohm", bleederOhms);
        Allowed.positive("choke_uH", chokeMicrohenries);
        Allowed.notNegative("choke_resistance_ohm", chokeResistanceOhms);
    }
}
