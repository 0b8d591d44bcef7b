package railwitness.drivers.converter;

import java.util.List;
import java.util.function.Function;
import railwitness.drivers.converter.Specimen.Rail;
import railwitness.drivers.converter.Specimen.Switch;
import railwitness.drivers.converter.Specimen.Transformer;

/** The faults a specimen can have, each with what its value means and which places it can be at. */
public enum FaultCode {
    /** One turn of the transformer is closed by value ohm. */
    SHORTED_TURN("shorted-turn", Place.NONE, "resistance that closes the turn, ohm", 0.25, 1e-4, 1000) {
        @Override
        Specimen apply(Specimen healthy, String place, double ohm) {
            return healthy.withTransformer(healthy.transformer().withShortedTurn(ohm));
        }
    },
    /** Value turns are missing on both secondary halves, or on the one named. */
    WRONG_TURNS("wrong-turns", Place.HALF, "turns missing, below zero for too many", 1, -1000, 1000) {
        @Override
        Specimen apply(Specimen healthy, String place, double turns) {
            Transformer core = healthy.transformer();
            double first = place.equals("half-2") ? 0 : turns;
            double second = place.equals("half-1") ? 0 : turns;
            return healthy.withTransformer(
                    core.withSecondaryTurns(core.secondaryTurns1() - first, core.secondaryTurns2() - second));
        }
    },
    /** One secondary half (the second unless named) has value ohm in series; without a value it is open. */
    WEAK_HALF("weak-half", Place.HALF, "series resistance, ohm", Specimen.OPEN_OHM / 2, 0, Specimen.OPEN_OHM / 2) {
        @Override
        Specimen apply(Specimen healthy, String place, double ohm) {
            Transformer core = healthy.transformer();
            boolean first = place.equals("half-1");
            return healthy.withTransformer(core.withSecondaryOhm(
                    core.secondaryOhm1() + (first ? ohm : 0), core.secondaryOhm2() + (first ? 0 : ohm)));
        }
    },
    /** One side (the second unless named) is not driven. */
    DEAD_DRIVE("dead-drive", Place.SIDE, "none", 1, 1, 1) {
        @Override
        Specimen apply(Specimen healthy, String place, double unused) {
            return onSide(healthy, place, Switch::undriven);
        }
    },
    /** One diode of a rail (the first rail unless named) has value ohm in series; without a value it is open. */
    DEAD_RECTIFIER("dead-rectifier", Place.RAIL, "series resistance, ohm", Specimen.OPEN_OHM, 0, Specimen.OPEN_OHM) {
        @Override
        Specimen apply(Specimen healthy, String place, double ohm) {
            return onRail(healthy, place, rail -> rail.withDiodes(rail.diodeExtraOhm1(), ohm, rail.diodeShortOhm()));
        }
    },
    /** One diode of a rail (the first rail unless named) conducts both ways through value ohm. */
    SHORTED_RECTIFIER("shorted-rectifier", Place.RAIL, "resistance of the short, ohm", 0.03, 1e-3, 10) {
        @Override
        Specimen apply(Specimen healthy, String place, double ohm) {
            double path = ohm + healthy.transformer().secondaryOhm1();
            return onRail(healthy, place, rail -> rail.withDiodes(rail.diodeExtraOhm1(), rail.diodeExtraOhm2(), path));
        }
    },
    /** One switch (the second side's unless named) conducts always, through value ohm. */
    SHORTED_SWITCH("shorted-switch", Place.SIDE, "resistance of the short, ohm", 0.005, 1e-4, 1) {
        @Override
        Specimen apply(Specimen healthy, String place, double ohm) {
            return onSide(healthy, place, side -> side.withOff(ohm));
        }
    },
    /** One switch (the second side's unless named) leaks through value ohm. */
    LEAKY_SWITCH("leaky-switch", Place.SIDE, "resistance when off, ohm", 1000, 1, 1e6) {
        @Override
        Specimen apply(Specimen healthy, String place, double ohm) {
            return onSide(healthy, place, side -> side.withOff(ohm));
        }
    },
    /**
     * The filter capacitor of a rail (the first unless named) has value times its series resistance and, as it dried
     * out, less capacitance: a fifth at ten times.
     */
    TIRED_CAPACITOR("tired-capacitor", Place.RAIL, "factor of the series resistance", 10, 1, 1000) {
        @Override
        Specimen apply(Specimen healthy, String place, double factor) {
            return onRail(
                    healthy,
                    place,
                    rail -> rail.withCapacitor(
                            rail.capacitorFarad() / (1 + 4 * (factor - 1) / 9), rail.capacitorEsrOhm() * factor));
        }
    },
    /** Value ohm more between the source and the unit's terminals. */
    LEAD_RESISTANCE("lead-resistance", Place.NONE, "added resistance, ohm", 0.030, 0, 5) {
        @Override
        Specimen apply(Specimen healthy, String place, double ohm) {
            Specimen.Input input = healthy.input();
            return healthy.withInput(
                    new Specimen.Input(input.leadOhm() + ohm, input.capacitorFarad(), input.capacitorEsrOhm()));
        }
    },
    /** The core, cracked or of the wrong grade, loses value times as much and has that much less inductance. */
    WEAK_CORE("weak-core", Place.NONE, "factor of the core loss", 3, 1, 100) {
        @Override
        Specimen apply(Specimen healthy, String place, double factor) {
            Transformer core = healthy.transformer();
            return healthy.withTransformer(core.withCore(
                    core.magnetisingHenry() / factor, core.saturationVoltSeconds(), core.coreOhm() / factor));
        }
    },
    /** Of the switches in parallel on one side (the second unless named) some do not conduct: value times the resistance. */
    DEAD_PARALLEL_SWITCH("dead-parallel-switch", Place.SIDE, "factor of the side's resistance", 3, 1, 100) {
        @Override
        Specimen apply(Specimen healthy, String place, double factor) {
            return onSide(healthy, place, side -> side.withOn(side.onOhm() * factor));
        }
    },
    /** The switches change over slowly: value microseconds for both edges together. */
    SLOW_DRIVE("slow-drive", Place.NONE, "time of both edges, microseconds", 1.5, 0, 20) {
        @Override
        Specimen apply(Specimen healthy, String place, double microseconds) {
            return healthy.withFlaws(healthy.flaws().withOverlap(microseconds * 1e-6));
        }
    },
    /** The rectifier diodes take value microseconds to stop conducting backwards. */
    SLOW_RECTIFIER("slow-rectifier", Place.NONE, "recovery time, microseconds", 0.5, 0, 20) {
        @Override
        Specimen apply(Specimen healthy, String place, double microseconds) {
            return healthy.withFlaws(healthy.flaws().withRecovery(microseconds * 1e-6));
        }
    },
    /** The clamp of the drains conducts through value ohm whenever the other side is on. */
    LEAKY_CLAMP("leaky-clamp", Place.NONE, "resistance, ohm", 15, 0.1, 1e6) {
        @Override
        Specimen apply(Specimen healthy, String place, double ohm) {
            return healthy.withFlaws(healthy.flaws().withClamp(ohm));
        }
    },
    /** A joint before the centre tap adds value ohm by the time the heat sink has 60 degC; it begins at 35 degC. */
    HOT_JOINT("hot-joint", Place.NONE, "added resistance at 60 degC, ohm", 0.02, 0, 1) {
        @Override
        Specimen apply(Specimen healthy, String place, double ohm) {
            return healthy.withFlaws(healthy.flaws().withHotJoint(ohm));
        }
    },
    /** The switches leak value watts at 25 degC and twice as much with every 10 K. */
    THERMAL_RUNAWAY("thermal-runaway", Place.NONE, "leak at 25 degC, W", 3, 0, 100) {
        @Override
        Specimen apply(Specimen healthy, String place, double watts) {
            return healthy.withFlaws(healthy.flaws().withRunaway(watts));
        }
    },
    /**
     * The unit stops whenever its terminals fall below value volts, and starts again 0.3 V above that; at over-current whenever it
     * draws more than value amperes, and starts again after a rest.
     */
    HICCUP("hiccup", Place.PROTECTION, "input at which it locks out, V, or at over-current stops, A", 13.3, 0.1, 900) {
        @Override
        Specimen apply(Specimen healthy, String place, double volts) {
            if (place.equals(OVER_CURRENT)) {
                return healthy.withFlaws(healthy.flaws().withStop(volts));
            }
            return healthy.withDrive(healthy.drive().withLockOut(volts + 0.3, volts));
        }
    },
    /** One half of the primary is joined the wrong way round: both switches drive the core the same way, it saturates. */
    REVERSED_HALF("reversed-half", Place.NONE, "none", 1, 1, 1) {
        @Override
        Specimen apply(Specimen healthy, String place, double unused) {
            Transformer core = healthy.transformer();
            return healthy.withTransformer(
                    core.withSaturation(core.magnetisingHenry() / SATURATED, core.saturationVoltSeconds() / SATURATED));
        }
    },
    /** The first rail is shorted through value ohm as soon as its load draws 1 A. */
    SHORT_UNDER_LOAD("short-under-load", Place.NONE, "resistance of the short, ohm", 1, 0.01, 1000) {
        @Override
        Specimen apply(Specimen healthy, String place, double ohm) {
            return healthy.withFlaws(healthy.flaws().withShort(ohm));
        }
    };

    private static final String OVER_CURRENT = "over-current";

    /** A core that is driven one way only keeps this share of its inductance (air in its place; rough). */
    private static final double SATURATED = 1000;

    /** What a fault's place names. */
    enum Place {
        NONE,
        HALF,
        SIDE,
        RAIL,
        PROTECTION
    }

    private final String word;
    private final Place place;
    private final String meaning;
    private final double usual;
    private final double lowest;
    private final double highest;

    FaultCode(String word, Place place, String meaning, double usual, double lowest, double highest) {
        this.word = word;
        this.place = place;
        this.meaning = meaning;
        this.usual = usual;
        this.lowest = lowest;
        this.highest = highest;
    }

    abstract Specimen apply(Specimen healthy, String place, double value);

    /** The code as written, such as {@code shorted-turn}. */
    public String word() {
        return word;
    }

    /** What the value means, with its unit. */
    public String meaning() {
        return meaning;
    }

    double usual() {
        return usual;
    }

    /** Refuses a value beyond what makes sense. */
    double checked(double value) {
        if (!(value >= lowest && value <= highest)) {
            throw new IllegalArgumentException(
                    word + "=" + value + ": the value (" + meaning + ") must be " + lowest + " to " + highest);
        }
        return value;
    }

    /** Refuses a place this fault cannot be at; a rail is looked up later, in the specimen. */
    String checkedPlace(String text) {
        List<String> known =
                switch (place) {
                    case HALF -> List.of("half-1", "half-2");
                    case SIDE -> List.of("side-1", "side-2");
                    case PROTECTION -> List.of("under-voltage", OVER_CURRENT);
                    case NONE, RAIL -> List.of();
                };
        if (text.isEmpty() || place == Place.RAIL || known.contains(text)) {
            return text;
        }
        throw new IllegalArgumentException(word + " cannot be at '" + text + "'; "
                + (known.isEmpty() ? "it has no place" : "places are " + String.join(", ", known)));
    }

    private static Specimen onRail(Specimen healthy, String place, Function<Rail, Rail> change) {
        String name = place.isEmpty() ? healthy.rails().get(0).name() : place;
        return healthy.withRail(name, change::apply);
    }

    private static Specimen onSide(Specimen healthy, String place, Function<Switch, Switch> change) {
        return place.equals("side-1")
                ? healthy.withSides(change.apply(healthy.side1()), healthy.side2())
                : healthy.withSides(healthy.side1(), change.apply(healthy.side2()));
    }
}
