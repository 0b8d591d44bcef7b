package railwitness.safety.caution;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** Works out the cautions of a unit and what refuses power altogether. */
public final class Cautions {
    private static final double FAR_ABOVE = 2;

    private final List<Caution> found = new ArrayList<>();

    private Cautions() {}

    /** Gravest first; among equals in the order in which {@link Topic} names them. */
    public static List<Caution> of(Hazards hazards) {
        return of(hazards, false);
    }

    /** @param setByHand whether the supply has only knobs */
    public static List<Caution> of(Hazards hazards, boolean setByHand) {
        Cautions cautions = new Cautions();
        if (setByHand) {
            cautions.add(SignalWord.DANGER, Topic.KNOBS, "");
        }
        cautions.add(SignalWord.WARNING, Topic.NO_EMERGENCY_STOP, "");
        cautions.railVoltage(hazards);
        cautions.storedEnergy(hazards);
        cautions.rating("filter", hazards.railVolts(), hazards.capacitorRatingVolts());
        cautions.inputRating(hazards);
        cautions.inputCurrent(hazards);
        cautions.fuse(hazards);
        cautions.hotParts(hazards);
        hazards.earthedOrJoined()
                .forEach(pair -> cautions.add(SignalWord.WARNING, Topic.JOINED_TERMINALS, "Here: " + pair + "."));
        cautions.source(hazards);
        String touch = "The touch limit of this unit is " + number(hazards.touchVolts(), "V") + ".";
        cautions.add(SignalWord.WARNING, Topic.AFTER_POWER, touch);
        cautions.add(SignalWord.NOTICE, Topic.LOCAL_CODES, "");
        cautions.found.sort(Comparator.comparing(Caution::word).thenComparing(Caution::topic));
        return List.copyOf(cautions.found);
    }

    /** Reasons for which there is no power, whoever takes responsibility; empty when there are none. */
    public static List<String> refusals(Hazards hazards) {
        List<String> refusals = new ArrayList<>();
        if (!hazards.source().endsWithTheSupply() && !hazards.contactorReadBack()) {
            refusals.add("the source is '" + hazards.source().word() + "' and no contactor is driven and read back:"
                    + " switching off would not end the power");
        }
        if (hazards.railVolts() > hazards.capacitorRatingVolts()) {
            refusals.add("a rail reaches " + number(hazards.railVolts(), "V")
                    + " without load at the highest input, its capacitors are rated "
                    + number(hazards.capacitorRatingVolts(), "V") + ": lower the highest input of the plan");
        }
        OptionalDouble input = hazards.inputCapacitorRatingVolts();
        if (input.isPresent() && hazards.inputVolts() > input.getAsDouble()) {
            refusals.add("the highest input of the plan is " + number(hazards.inputVolts(), "V")
                    + ", the input capacitors are rated " + number(input.getAsDouble(), "V"));
        }
        return refusals;
    }

    private void railVoltage(Hazards hazards) {
        double volts = hazards.betweenVolts();
        if (volts >= Threshold.LOW_VOLTAGE.value()) {
            boolean high = volts >= Threshold.HIGH_VOLTAGE.value();
            add(
                    high ? SignalWord.DANGER : SignalWord.WARNING,
                    Topic.RAIL_VOLTAGE,
                    "Up to " + number(volts, "V") + " stand between the rails without load.");
        }
    }

    private void storedEnergy(Hazards hazards) {
        double joules = hazards.storedJoules();
        if (joules < Threshold.SPARK_ENERGY.value()) {
            return;
        }
        boolean highVoltage = hazards.betweenVolts() >= Threshold.LABORATORY_VOLTAGE.value();
        SignalWord word = SignalWord.CAUTION;
        if (highVoltage && joules >= Threshold.HIGH_ENERGY.value()) {
            word = SignalWord.DANGER;
        } else if (joules > Threshold.THERMAL_ENERGY.value()) {
            word = SignalWord.WARNING;
        }
        add(word, Topic.STORED_ENERGY, "The filter capacitors hold up to " + number(joules, "J") + ".");
    }

    private void inputRating(Hazards hazards) {
        hazards.inputCapacitorRatingVolts().ifPresent(rating -> rating("input", hazards.inputVolts(), rating));
    }

    private void rating(String which, double volts, double rating) {
        if (volts >= Threshold.RATING_SHARE.value() * rating) {
            String here = "The " + which + " capacitors see up to " + number(volts, "V") + " and are rated "
                    + number(rating, "V") + ".";
            add(volts > rating ? SignalWord.WARNING : SignalWord.CAUTION, Topic.CAPACITOR_RATING, here);
        }
    }

    private void inputCurrent(Hazards hazards) {
        if (hazards.inputAmps() >= Threshold.STRONG_CURRENT.value()) {
            String here = "The input carries up to " + number(hazards.inputAmps(), "A") + ".";
            add(SignalWord.WARNING, Topic.INPUT_CURRENT, here);
        }
    }

    private void fuse(Hazards hazards) {
        if (hazards.fuseAmps().isEmpty()) {
            add(SignalWord.WARNING, Topic.FUSE, "The design sheet names no fuse.");
            return;
        }
        double fuse = hazards.fuseAmps().getAsDouble();
        String here = "The fuse is " + number(fuse, "A") + ", the highest input current "
                + number(hazards.inputAmps(), "A") + ".";
        if (fuse > FAR_ABOVE * hazards.inputAmps()) {
            add(SignalWord.WARNING, Topic.FUSE, here);
        } else if (fuse < hazards.inputAmps()) {
            add(SignalWord.NOTICE, Topic.FUSE, here);
        }
    }

    private void hotParts(Hazards hazards) {
        if (hazards.hottestDegC() >= Threshold.HOT_SURFACE.value()) {
            String here = "A part may reach " + number(hazards.hottestDegC(), "degC") + ".";
            add(SignalWord.CAUTION, Topic.HOT_PARTS, here);
        }
    }

    private void source(Hazards hazards) {
        if (!hazards.source().endsWithTheSupply()) {
            add(
                    SignalWord.DANGER,
                    Topic.SOURCE,
                    "The source is '" + hazards.source().word() + "'.");
        }
    }

    private void add(SignalWord word, Topic topic, String here) {
        found.add(new Caution(word, topic, here));
    }

    static String number(double value, String unit) {
        String digits = String.format(Locale.ROOT, "%.1f", value);
        return digits.replace(".0", "") + " " + unit;
    }
}
