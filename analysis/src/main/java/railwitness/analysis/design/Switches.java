package railwitness.analysis.design;

import java.util.OptionalDouble;

/**
 * The switches: table {@code [switches]}.
 *
 * @param onResistanceOhms one side at 25 degC, ohm
 * @param ratingVolts highest voltage a switch may see, V
 * @param gateAndSwitchingWatts what switching them costs, W
 */
public record Switches(
        OptionalDouble onResistanceOhms, OptionalDouble ratingVolts, OptionalDouble gateAndSwitchingWatts) {
    public Switches {
        Allowed.notNegative("on_resistance_ohm", onResistanceOhms);
        Allowed.positive("rating_V", ratingVolts);
        Allowed.notNegative("gate_and_switching_W", gateAndSwitchingWatts);
    }
}
