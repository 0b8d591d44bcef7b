package railwitness.analysis.design;

import java.util.OptionalDouble;

/**
 * What a sound rail stands at without load, and between which magnitudes it must stay. The upper bound is the lower of
 * 0.95 times what its capacitors are rated for and 1.15 times what is expected (common practice, no source); a limit on
 * the sheet lowers it, and only the rail's own limit may lie above what is expected.
 *
 * @param expectedVolts magnitude without load at the highest input, or the nominal where the rail is held, V
 * @param ratingVolts of its capacitors, V
 * @param highVolts above this the output goes off, V
 * @param lowVolts below this, once the rail is up, the output goes off, V; empty where the sheet states nothing
 */
public record RailBounds(double expectedVolts, OptionalDouble ratingVolts, double highVolts, OptionalDouble lowVolts) {
    private static final double RATING_SHARE = 0.95;
    private static final double OVER_EXPECTED = 1.15;

    /** By how much an unloaded rail of unknown turns may stand above its nominal (common practice, no source). */
    private static final double UNLOADED = 1.2;

    /** @param highestInputVolts of sheet and plan, at the unit's terminals, V */
    public static RailBounds of(Design design, Rail rail, double highestInputVolts) {
        double expected = expected(design, rail, highestInputVolts);
        OptionalDouble rating = design.capacitorRatingVolts(rail);
        double byRating = RATING_SHARE * rating.orElse(Double.POSITIVE_INFINITY);
        double stated = rail.limitHighVolts()
                .orElse(Math.min(
                        design.limits().railHighVolts().orElse(Double.POSITIVE_INFINITY), OVER_EXPECTED * expected));
        OptionalDouble low = rail.limitLowVolts().isPresent()
                ? rail.limitLowVolts()
                : design.limits().railLowVolts();
        return new RailBounds(expected, rating, Math.min(stated, byRating), low);
    }

    /** The higher of what the sheet plans and this, V. */
    public static double highestInput(Design design, double plannedVolts) {
        return Math.max(
                plannedVolts,
                design.input().highestVolts().orElse(design.input().nominalVolts()));
    }

    /** Whether the capacitors and not the expected voltage set the upper bound. */
    public boolean byRating() {
        return ratingVolts.isPresent() && highVolts == RATING_SHARE * ratingVolts.getAsDouble();
    }

    private static double expected(Design design, Rail rail, double highestInputVolts) {
        if (design.regulates(rail)) {
            return rail.nominalMagnitude();
        }
        return design.ratio(rail)
                        .orElse(UNLOADED
                                * rail.nominalMagnitude()
                                / design.input().nominalVolts())
                * highestInputVolts;
    }
}
