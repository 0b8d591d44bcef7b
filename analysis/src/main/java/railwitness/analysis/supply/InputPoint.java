package railwitness.analysis.supply;

import railwitness.analysis.uncertainty.Estimate;

/**
 * The input at one operating point.
 *
 * @param voltage V
 * @param current A
 * @param power product of the two, W: behind the unit's input capacitor both are steady
 */
public record InputPoint(Estimate voltage, Estimate current, Estimate power) {
    static InputPoint of(Estimate voltage, Estimate current) {
        return new InputPoint(voltage, current, voltage.times(current));
    }
}
