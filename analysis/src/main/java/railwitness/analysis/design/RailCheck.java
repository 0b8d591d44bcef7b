package railwitness.analysis.design;

import java.util.OptionalDouble;

/** Whether the turns can give a rail. */
final class RailCheck {
    private static final String RAIL = "[[rail]]";
    private static final String NOMINAL = "nominal_V";

    /** Ringing lifts an unloaded rail by a few percent (circuit simulation: 2 %). */
    private static final double RINGING = 1.05;

    /** No sound unit sags to half of what its turns give; one that sags by a quarter is poor (common practice, no source). */
    private static final double FAR_TOO_LOW = 0.5;

    private static final double LOW = 0.75;

    private final Design design;
    private final double highestVolts;
    private final Remarks remarks;

    RailCheck(Design design, double highestVolts, Remarks remarks) {
        this.design = design;
        this.highestVolts = highestVolts;
        this.remarks = remarks;
    }

    void take(int place) {
        Rail rail = design.rails().get(place);
        OptionalDouble top = topPerVolt(rail);
        if (top.isEmpty()) {
            return;
        }
        double perVolt = top.getAsDouble();
        double room = design.regulates(rail) ? 1 : RINGING;
        if (rail.nominalMagnitude() > room * perVolt * highestVolts) {
            remarks.cannotBe(
                    RAIL,
                    place,
                    NOMINAL,
                    "%s: %s V cannot come of %s at %s V of input, which give at most %s V; put turns, nominal_V or the"
                            + " highest input right",
                    rail.name(),
                    rail.nominalMagnitude(),
                    turns(rail),
                    highestVolts,
                    perVolt * highestVolts);
        } else if (design.regulates(rail)) {
            held(place, rail, perVolt);
        } else {
            free(place, rail, perVolt);
        }
    }

    /** Volts of the rail for each volt of input at the most; behind a choke only where the duty is known. */
    private OptionalDouble topPerVolt(Rail rail) {
        OptionalDouble ratio = design.ratio(rail);
        return ratio.isPresent() && design.converter().filter() == FilterInput.CHOKE
                ? OptionalDouble.of(
                        ratio.getAsDouble() * design.converter().bothDuties().orElse(1))
                : ratio;
    }

    private void held(int place, Rail rail, double perVolt) {
        double needed = rail.nominalMagnitude() / perVolt;
        double lowest = design.input().lowestVolts().orElse(design.input().nominalVolts());
        if (needed > lowest) {
            remarks.look(
                    RAIL,
                    place,
                    NOMINAL,
                    "%s: %s hold %s V only from %s V of input on, and %s V is planned",
                    rail.name(),
                    turns(rail),
                    rail.nominalMagnitude(),
                    needed,
                    lowest);
        }
    }

    private void free(int place, Rail rail, double perVolt) {
        double nominalInput = design.input().nominalVolts();
        double given = perVolt * nominalInput;
        if (rail.nominalMagnitude() > RINGING * given) {
            remarks.look(
                    RAIL,
                    place,
                    NOMINAL,
                    "%s: %s give at most %s V at the nominal input of %s V, less than the nominal %s V",
                    rail.name(),
                    turns(rail),
                    given,
                    nominalInput,
                    rail.nominalMagnitude());
        }
        boolean dutyUnknown = design.converter().filter() == FilterInput.CHOKE
                && design.converter().duty().isEmpty();
        if (dutyUnknown || rail.nominalMagnitude() >= LOW * given) {
            return;
        }
        remarks.add(
                rail.nominalMagnitude() < FAR_TOO_LOW * given ? Remark.Weight.CANNOT_BE : Remark.Weight.LOOK,
                RAIL,
                place,
                NOMINAL,
                "%s: nothing holds this rail and %s give %s V at %s V of input, far above the nominal %s V; give its own"
                        + " secondary_turns, or say regulated = true",
                rail.name(),
                turns(rail),
                given,
                nominalInput,
                rail.nominalMagnitude());
    }

    private String turns(Rail rail) {
        Transformer transformer = design.transformer().orElseThrow();
        return transformer.primaryTurns() + " to " + rail.secondaryTurns().orElse(transformer.secondaryTurns())
                + " turns";
    }
}
