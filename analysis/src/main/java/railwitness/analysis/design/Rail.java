package railwitness.analysis.design;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One rail: a table {@code [[rail]]}. What it leaves out holds as the tables for all rails say.
 *
 * @param name lower-case letters, digits and hyphens; it names the rail's readings
 * @param nominalVolts with its sign, V; not 0
 * @param fullLoadAmperes rated load, A, above 0
 * @param secondaryTurns turns of the half that feeds it, where they are not the transformer's {@code secondary_turns}
 * @param regulated whether it is held at its nominal voltage, where that is not as {@code [converter] regulated} says
 * @param capacitorRatingVolts of its own filter capacitors, where it is not {@code [filter] capacitor_rating_V}, V
 * @param limitHighVolts magnitude above which the output goes off, V
 * @param limitLowVolts magnitude, once up, below which the output goes off, V
 */
public record Rail(
        String name,
        double nominalVolts,
        OptionalDouble fullLoadAmperes,
        OptionalInt secondaryTurns,
        Optional<Boolean> regulated,
        OptionalDouble capacitorRatingVolts,
        OptionalDouble limitHighVolts,
        OptionalDouble limitLowVolts) {
    public Rail {
        if (!name.matches("[a-z][a-z0-9-]*")) {
            throw new IllegalArgumentException("rail name '" + name + "' must be lower-case letters, digits, hyphens");
        }
        Allowed.require(Double.isFinite(nominalVolts) && nominalVolts != 0, "nominal_V", nominalVolts, "must not be 0");
        Allowed.positive("full_load_A", fullLoadAmperes);
        secondaryTurns.ifPresent(turns -> Allowed.count("secondary_turns", turns, 1));
        Allowed.positive("capacitor_rating_V", capacitorRatingVolts);
        Allowed.positive("limit_high_V", limitHighVolts);
        Allowed.within("limit_low_V", limitLowVolts, 0, limitHighVolts.orElse(Double.MAX_VALUE));
    }

    /** A rail of which nothing is said that the tables for all rails do not say. */
    public Rail(String name, double nominalVolts, OptionalDouble fullLoadAmperes) {
        this(
                name,
                nominalVolts,
                fullLoadAmperes,
                OptionalInt.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /** Without its sign, V. */
    public double nominalMagnitude() {
        return Math.abs(nominalVolts);
    }
}
