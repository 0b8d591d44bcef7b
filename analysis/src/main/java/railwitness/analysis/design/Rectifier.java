package railwitness.analysis.design;

import java.util.OptionalDouble;

/**
 * The rectifier: table {@code [rectifier]}. A diode drops {@code drop_V + slope_ohm * current}.
 *
 * @param dropVolts at small current, V
 * @param slopeOhms growth of the drop with current, ohm
 * @param ratingVolts highest reverse voltage, V
 */
public record Rectifier(OptionalDouble dropVolts, OptionalDouble slopeOhms, OptionalDouble ratingVolts) {
    public Rectifier {
        Allowed.notNegative("drop_V", dropVolts);
        Allowed.notNegative("slope_ohm", slopeOhms);
        Allowed.positive("rating_V", ratingVolts);
    }
}
