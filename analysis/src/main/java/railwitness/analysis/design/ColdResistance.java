package railwitness.analysis.design;

import java.util.OptionalDouble;

/**
 * What an ohmmeter must show at the unit's own terminals, disconnected: table {@code [cold_resistance]}.
 *
 * @param inputOhmsAtLeast across the input, ohm
 * @param switchOhmsAtLeast across one switch, ohm
 * @param railOhmsAtLeast across one rail, ohm
 */
public record ColdResistance(
        OptionalDouble inputOhmsAtLeast, OptionalDouble switchOhmsAtLeast, OptionalDouble railOhmsAtLeast) {
    public ColdResistance {
        Allowed.positive("input_ohm_at_least", inputOhmsAtLeast);
        Allowed.positive("switch_ohm_at_least", switchOhmsAtLeast);
        Allowed.positive("rail_ohm_at_least", railOhmsAtLeast);
    }

    /** Nothing is asked of the cold unit. */
    public static ColdResistance none() {
        return new ColdResistance(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }
}
