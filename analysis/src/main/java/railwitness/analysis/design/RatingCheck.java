package railwitness.analysis.design;

import java.util.OptionalDouble;

/** Whether capacitors, switches and diodes stand what they will see at the highest input. */
final class RatingCheck {
    private static final String RATING = "rating_V";
    private static final String CAPACITOR_RATING = "capacitor_rating_V";

    /** From this share of a capacitor's rating on it is worth a look. */
    private static final double NEAR = 0.9;

    /** What spikes need over what a switch or a diode sees at rest (common practice, no source). */
    private static final double SWITCH_ROOM = 1.3;

    private static final double DIODE_ROOM = 1.2;

    private final Design design;
    private final double highestVolts;
    private final Remarks remarks;

    RatingCheck(Design design, double highestVolts, Remarks remarks) {
        this.design = design;
        this.highestVolts = highestVolts;
        this.remarks = remarks;
    }

    void take() {
        rails();
        input();
        switches();
        diodes();
    }

    /** Each rail with capacitors of its own; of those that share the filter's rating the highest. */
    private void rails() {
        int worst = -1;
        for (int place = 0; place < design.rails().size(); place++) {
            if (design.rails().get(place).capacitorRatingVolts().isPresent()) {
                rail(place, "[[rail]]", place);
            } else if (worst < 0 || expected(place) > expected(worst)) {
                worst = place;
            }
        }
        if (worst >= 0) {
            rail(worst, "[filter]", Remarks.ONLY);
        }
    }

    private double expected(int place) {
        return RailBounds.of(design, design.rails().get(place), highestVolts).expectedVolts();
    }

    private void rail(int at, String table, int place) {
        Rail rail = design.rails().get(at);
        OptionalDouble rating = design.capacitorRatingVolts(rail);
        double expected = expected(at);
        if (rating.isEmpty() || design.ratio(rail).isEmpty() && !design.regulates(rail)) {
            return;
        }
        over(
                expected,
                rating.getAsDouble(),
                NEAR,
                table,
                place,
                CAPACITOR_RATING,
                "the " + rail.name() + " rail's capacitors are rated %s V and see %s V "
                        + (design.regulates(rail) ? "in use" : "without load at the highest input")
                        + "%s");
    }

    private void input() {
        design.input()
                .capacitorRatingVolts()
                .ifPresent(rating -> over(
                        highestVolts,
                        rating,
                        NEAR,
                        "[input]",
                        Remarks.ONLY,
                        CAPACITOR_RATING,
                        "the input capacitors are rated %s V and see %s V at the highest input%s"));
    }

    /** The centre tap doubles what the switch that is off sees. */
    private void switches() {
        design.switches()
                .map(Switches::ratingVolts)
                .orElse(OptionalDouble.empty())
                .ifPresent(
                        rating -> over(
                                2 * highestVolts,
                                rating,
                                1 / SWITCH_ROOM,
                                "[switches]",
                                Remarks.ONLY,
                                RATING,
                                "a switch is rated %s V and sees twice the input, %s V at its highest, and spikes above that%s"));
    }

    /** The half that does not feed adds to the rail. */
    private void diodes() {
        OptionalDouble rating = design.rectifier().map(Rectifier::ratingVolts).orElse(OptionalDouble.empty());
        OptionalDouble sees = Stress.of(design, highestVolts).diodeVolts();
        if (rating.isPresent() && sees.isPresent()) {
            over(
                    sees.getAsDouble(),
                    rating.getAsDouble(),
                    1 / DIODE_ROOM,
                    "[rectifier]",
                    Remarks.ONLY,
                    RATING,
                    "a diode is rated %s V and sees twice the half winding, %s V at the highest input%s");
        }
    }

    private void over(double sees, double rating, double near, String table, int place, String key, String form) {
        if (sees > rating) {
            remarks.cannotBe(table, place, key, form, rating, sees, "; lower the highest input or fit better ones");
        } else if (sees > near * rating) {
            remarks.look(table, place, key, form, rating, sees, ", which leaves little room");
        }
    }
}
