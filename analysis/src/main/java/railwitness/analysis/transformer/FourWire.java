package railwitness.analysis.transformer;

import java.util.List;
import railwitness.analysis.uncertainty.Estimate;

/**
 * Resistance of a winding by four wires: a current through one pair of leads, the voltage taken by another. Measured with
 * the current one way and the other, a voltage that does not follow the current (warm joints of unlike metals, the
 * meter's zero) cancels: {@code R = (V+ - V-) / (I+ - I-)}.
 */
public final class FourWire {
    /** Below this two wires are refused, ohm: leads and clips bring some 0.1 to 0.3 ohm (common practice, no source). */
    public static final double LEAST_TWO_WIRE_OHMS = 10;

    private FourWire() {}

    /**
     * From both directions.
     *
     * @param forwardVolts with its sign, V
     * @param forwardAmperes with its sign, A
     * @param backwardVolts with its sign, V
     * @param backwardAmperes of the other sign, A
     * @return ohm
     * @throws IllegalArgumentException where both currents flow the same way, or the resistance comes out below zero
     */
    public static Estimate ohms(
            Estimate forwardVolts, Estimate forwardAmperes, Estimate backwardVolts, Estimate backwardAmperes) {
        if (!(forwardAmperes.value() * backwardAmperes.value() < 0)) {
            throw new IllegalArgumentException(
                    "both currents have the same direction; exchange the supply's leads at the winding and measure again");
        }
        Estimate ohms = forwardVolts.minus(backwardVolts).over(forwardAmperes.minus(backwardAmperes));
        if (!(ohms.value() > 0)) {
            throw new IllegalArgumentException(
                    "the resistance comes out below zero; the meter's leads are exchanged against the supply's");
        }
        return ohms;
    }

    /** The voltage that does not follow the current, V: what the two directions cancelled. */
    public static Estimate thermalVolts(
            Estimate forwardVolts, Estimate forwardAmperes, Estimate backwardVolts, Estimate backwardAmperes) {
        Estimate ohms = ohms(forwardVolts, forwardAmperes, backwardVolts, backwardAmperes);
        return Estimate.mean(List.of(
                forwardVolts.minus(ohms.times(forwardAmperes)), backwardVolts.minus(ohms.times(backwardAmperes))));
    }

    /**
     * Resistance at 20 degC.
     *
     * @param ohms as measured
     * @param degC of the winding then
     */
    public static Estimate at20(Estimate ohms, Estimate degC) {
        double factor = Copper.factor(degC.value());
        return Estimate.propagate(
                ohms.value() / factor,
                List.of(ohms, degC),
                1 / factor,
                -ohms.value() * Copper.PER_KELVIN_20 / (factor * factor));
    }

    /**
     * A reading between two leads, as an ohmmeter gives it.
     *
     * @throws IllegalArgumentException where the leads would drown what is measured
     */
    public static Estimate twoWire(Estimate ohms) {
        if (ohms.value() < LEAST_TWO_WIRE_OHMS) {
            throw new IllegalArgumentException("below 10 ohm the meter's own leads drown the winding; send a current"
                    + " through it with the supply and take the voltage at the winding's ends");
        }
        return ohms;
    }
}
