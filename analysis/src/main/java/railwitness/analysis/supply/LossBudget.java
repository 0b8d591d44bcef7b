package railwitness.analysis.supply;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.uncertainty.Estimate;

/**
 * The design's losses by part beside the measured loss of one point.
 *
 * @param point where
 * @param predicted what the sheet predicts there
 * @param notAccountedFor measured loss less the sum of the parts, W
 */
public record LossBudget(OperatingPoint point, Prediction predicted, Estimate notAccountedFor) {

    /** The budget of a point; empty where the sheet does not know the turns, or the unit is off. */
    public static Optional<LossBudget> of(Design design, OperatingPoint point) {
        boolean off = List.of("standby", "power-up").contains(point.stage())
                || point.input().voltage().value() <= 0;
        if (off) {
            return Optional.empty();
        }
        Map<String, Double> loads = new java.util.LinkedHashMap<>();
        point.rails()
                .forEach((rail, at) -> loads.put(rail, Math.max(0, at.current().value())));
        return Prediction.of(design, point.input().voltage().value(), loads)
                .map(predicted -> new LossBudget(point, predicted, point.loss().plus(-predicted.totalLossWatts())));
    }

    /** Predicted losses by part, W. */
    public Map<String, Double> parts() {
        return predicted.lossWatts();
    }
}
