package railwitness.analysis.transformer;

import java.util.List;
import railwitness.analysis.uncertainty.Estimate;

/** Inductances of a wound transformer from what a bench can read. */
public final class Inductance {
    private Inductance() {}

    /**
     * From a sine drive: {@code L = sqrt((V / I)^2 - R^2) / (2 pi f)}. With the other winding open it is the magnetising
     * inductance, with it shorted the leakage; R is then both windings' as seen from the driven one.
     *
     * @param volts root mean square, V
     * @param amperes root mean square, A, above 0
     * @param hertz Hz
     * @param ohms resistance in the path, ohm
     * @return H
     * @throws IllegalArgumentException where resistance alone explains the current
     */
    public static Estimate sine(Estimate volts, Estimate amperes, Estimate hertz, Estimate ohms) {
        Estimate impedance = volts.over(amperes);
        double squared = impedance.value() * impedance.value() - ohms.value() * ohms.value();
        if (!(squared > 0)) {
            throw new IllegalArgumentException(
                    "the resistance alone lets this current through; measure at a higher frequency");
        }
        double reactance = Math.sqrt(squared);
        Estimate reactive = Estimate.propagate(
                reactance, List.of(impedance, ohms), impedance.value() / reactance, -ohms.value() / reactance);
        return reactive.over(hertz).scale(1 / (2 * Math.PI));
    }

    /**
     * From the ramp of the current under a square drive: {@code L = V t / (difference of current)}.
     *
     * @param volts across the winding, V
     * @param seconds the ramp lasts, s
     * @param amperes from its foot to its top, A
     * @return H
     */
    public static Estimate ramp(Estimate volts, Estimate seconds, Estimate amperes) {
        return volts.times(seconds).over(amperes);
    }

    /**
     * From ringing with a known capacitor: {@code L = 1 / ((2 pi f)^2 C)}; damping below a quality of 5 shifts it by more
     * than 1 %.
     *
     * @param hertz of the ringing, Hz
     * @param farads of the capacitor, F
     * @return H
     */
    public static Estimate ringing(Estimate hertz, Estimate farads) {
        Estimate omega = hertz.scale(2 * Math.PI);
        return Estimate.exact(1).over(omega.times(omega).times(farads));
    }
}
