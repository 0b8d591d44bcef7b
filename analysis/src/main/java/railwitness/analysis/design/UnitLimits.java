package railwitness.analysis.design;

import java.util.OptionalDouble;

/**
 * Beyond these the output goes off: table {@code [limits]}. Magnitudes; a rail's limits hold for either sign.
 *
 * @param inputAmperes A
 * @param noLoadInputAmperes with the unit on and no load, A
 * @param standbyAmperes with the remote turn-on off, A
 * @param railHighVolts V
 * @param railLowVolts V, once the rails are up
 * @param imbalanceVolts difference of the rails' magnitudes, V
 * @param heatsinkDegC degC
 * @param extraLossWatts loss beyond the predicted one, W
 * @param touchVolts rails below this count as discharged, V
 */
public record UnitLimits(
        OptionalDouble inputAmperes,
        OptionalDouble noLoadInputAmperes,
        OptionalDouble standbyAmperes,
        OptionalDouble railHighVolts,
        OptionalDouble railLowVolts,
        OptionalDouble imbalanceVolts,
        OptionalDouble heatsinkDegC,
        OptionalDouble extraLossWatts,
        OptionalDouble touchVolts) {
    public UnitLimits {
        Allowed.positive("input_A", inputAmperes);
        Allowed.positive("no_load_input_A", noLoadInputAmperes);
        Allowed.positive("standby_A", standbyAmperes);
        Allowed.positive("rail_high_V", railHighVolts);
        Allowed.within("rail_low_V", railLowVolts, 0, railHighVolts.orElse(Double.MAX_VALUE));
        Allowed.positive("imbalance_V", imbalanceVolts);
        Allowed.finite("heatsink_degC", heatsinkDegC);
        Allowed.positive("extra_loss_W", extraLossWatts);
        Allowed.positive("touch_V", touchVolts);
    }

    /** No limit is stated. */
    public static UnitLimits none() {
        OptionalDouble unstated = OptionalDouble.empty();
        return new UnitLimits(unstated, unstated, unstated, unstated, unstated, unstated, unstated, unstated, unstated);
    }
}
