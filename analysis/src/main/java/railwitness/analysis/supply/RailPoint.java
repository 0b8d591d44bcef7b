package railwitness.analysis.supply;

import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * One rail at one operating point.
 *
 * @param voltage with its sign, V
 * @param current through the load, A, positive on either rail
 * @param power into the load, W, positive
 * @param rippleRms V, where a ripple meter was there
 */
public record RailPoint(Estimate voltage, Estimate current, Estimate power, Optional<Estimate> rippleRms) {
    static RailPoint of(Estimate voltage, Estimate current, Optional<Estimate> rippleRms) {
        return new RailPoint(voltage, current, voltage.abs().times(current), rippleRms);
    }
}
