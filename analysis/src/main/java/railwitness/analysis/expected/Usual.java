package railwitness.analysis.expected;

import railwitness.analysis.converter.Part;

/**
 * How far parts usually lie from what a sheet says: half of the width within which nearly all are found, as a share.
 * Common practice, no source, except where one is named. The standard uncertainty is that over root 3 (a rectangle, GUM
 * 4.3.7).
 */
enum Usual {
    FREQUENCY(Part.FREQUENCY, "switching frequency", 0.05, 0.5),
    DUTY(Part.DUTY, "duty", 0.01, 0.06),
    /** What a regulated unit holds its rails at, against the nominal: its divider and reference. */
    HELD(Part.HELD_VOLTS, "voltage the unit holds", 0.02, 0.02),
    RATIO(Part.RATIO, "turns ratio", 0, 0.06),
    /** Rises by a third to a half when hot; makers state a highest value, usual parts lie below. */
    SWITCH(Part.SWITCH_OHMS, "switches' resistance", 0.2, 0.65),
    PRIMARY(Part.PRIMARY_OHMS, "primary's resistance", 0.1, 0.65),
    INPUT_CAPACITOR(Part.INPUT_CAPACITOR_OHMS, "input capacitor's series resistance", 0.4, 0.6),
    SECONDARY(Part.SECONDARY_OHMS, "secondary's resistance", 0.1, 0.65),
    LEAKAGE(Part.LEAKAGE_PER_SQUARED_RATIO, "leakage", 0.25, 0.6),
    MAGNETISING(Part.MAGNETISING, "magnetising inductance", 0.25, 0.7),
    DROP(Part.DIODE_VOLTS, "diodes' drop", 0.05, 0.2),
    SLOPE(Part.DIODE_OHMS, "diodes' slope", 0.2, 0.75),
    CHOKE(Part.CHOKE, "chokes", 0.2, 0.5),
    CHOKE_OHMS(Part.CHOKE_OHMS, "chokes' resistance", 0.2, 0.6),
    /** From rectifier to terminals, where no choke is named. */
    WIRING(Part.CHOKE_OHMS, "a rail's wiring", 0.3, 0.6),
    /** Electrolytic capacitors: IEC 60384-4 allows +-20 %. */
    CAPACITOR(Part.CAPACITOR, "filter capacitors", 0.2, 0.6),
    ESR(Part.CAPACITOR_OHMS, "filter capacitors' series resistance", 0.3, 0.5),
    BLEEDER(Part.BLEEDER_SIEMENS, "bleeders", 0.1, 0.6),
    CONTROL(Part.CONTROL_AMPERES, "control current", 0.2, 0.4),
    GATE(Part.FIXED_WATTS, "gate and switching loss", 0.3, 0.5),
    CORE(Part.CORE_WATTS, "core loss", 0.25, 0.5),
    /** No sheet names them: from 2 C V^2 f of 10 nF at each switch, less what the leakage's energy returns. */
    SNUBBERS(Part.SNUBBER_WATTS, "snubbers and stray capacitances", 0, 0.35),
    SECONDARY_SNUBBERS(Part.SECONDARY_SNUBBER_WATTS, "snubbers of the secondary", 0, 0.35);

    private static final double ROOT_3 = Math.sqrt(3);

    /** Share by which a rail's part differs from its sister's: bought together, wound alike. */
    static final double SISTERS = 0.05;

    final Part part;
    final String words;
    private final double halfWidth;
    private final double missingU;

    Usual(Part part, String words, double halfWidth, double missingU) {
        this.part = part;
        this.words = words;
        this.halfWidth = halfWidth;
        this.missingU = missingU;
    }

    Tolerance tolerance(boolean missing) {
        return new Tolerance(part, -1, words, missing ? missingU : halfWidth / ROOT_3, missing);
    }
}
