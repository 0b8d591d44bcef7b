package railwitness.analysis.converter;

/** A number of the converter; SI units. Those of a rail may differ from rail to rail. */
public enum Part {
    /** Input at which core and snubber loss are stated, V. */
    NOMINAL_INPUT(false),
    /** Of the full transformer cycle, Hz. */
    FREQUENCY(false),
    /** Share of the cycle in which one switch is on; of a regulated unit the largest. */
    DUTY(false),
    /** Turns of a secondary half over those of a primary half, as wound for this rail. */
    RATIO(true),
    /** First secondary half's turns over those of {@link #RATIO}. */
    HALF_1(false),
    /** The same of the second half. */
    HALF_2(false),
    /** A switch when on, both alike, ohm. */
    SWITCH_OHMS(false),
    /** What the first side has in series beyond that, ohm; {@link Parts#OPEN} when not driven. */
    SIDE_1_OHMS(false),
    /** The same of the second side. */
    SIDE_2_OHMS(false),
    /** One primary half, ohm. */
    PRIMARY_OHMS(false),
    /** From the unit's terminals to the centre tap, ohm. */
    FEED_OHMS(false),
    /** Series resistance of the input capacitor, ohm. */
    INPUT_CAPACITOR_OHMS(false),
    /** One secondary half, ohm. */
    SECONDARY_OHMS(false),
    /** What the first half has in series beyond that, ohm; {@link Parts#OPEN} when open. */
    HALF_1_OHMS(false),
    /** The same of the second half. */
    HALF_2_OHMS(false),
    /** Leakage in series with a rail while all rails conduct, seen at a secondary half of ratio 1, H. */
    LEAKAGE_PER_SQUARED_RATIO(false),
    /** Inductance of a primary half, H. */
    MAGNETISING(false),
    /** A diode's drop at 0.1 A, V. */
    DIODE_VOLTS(false),
    /** Its series resistance, ohm. */
    DIODE_OHMS(false),
    /** Growth of its drop when the current grows e times, V. */
    DIODE_LOG_VOLTS(false),
    /** In series with the diode at the first secondary half, ohm; {@link Parts#OPEN} when dead. */
    DIODE_1_OHMS(true),
    /** The same at the second half. */
    DIODE_2_OHMS(true),
    /** Choke of a rail, H. */
    CHOKE(true),
    /** Its resistance, ohm. */
    CHOKE_OHMS(true),
    /** Filter capacitor of a rail, F. */
    CAPACITOR(true),
    /** Its series resistance, ohm. */
    CAPACITOR_OHMS(true),
    /** Across a rail besides its load, S. */
    BLEEDER_SIEMENS(true),
    /** Drawn by drive and control, A. */
    CONTROL_AMPERES(false),
    /** Drawn whether the unit is on or off, A. */
    STANDBY_AMPERES(false),
    /** Taken by gates and switching, whatever the input, W. */
    FIXED_WATTS(false),
    /** Core loss at the nominal input, W. */
    CORE_WATTS(false),
    /** In snubbers and stray capacitances at the nominal input, W. */
    SNUBBER_WATTS(false),
    /** In snubbers and stray capacitances of the secondary while the chokes' current never ends, at the nominal input, W. */
    SECONDARY_SNUBBER_WATTS(false),
    /** Loss beyond the core's that grows with the square of the input, at the nominal input, W. */
    SQUARE_WATTS(false),
    /** Loss that grows with the input current (overlap of slow switches), W per A. */
    OVERLAP_WATTS_PER_AMPERE(false),
    /** How far ringing lifts a rail without load, share of it. */
    IDLE_LIFT(false),
    /** Magnitude at which the unit holds a rail, V; 0 where it does not. */
    HELD_VOLTS(true);

    private final boolean ofRail;

    Part(boolean ofRail) {
        this.ofRail = ofRail;
    }

    boolean ofRail() {
        return ofRail;
    }
}
