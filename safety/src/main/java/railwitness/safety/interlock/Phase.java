package railwitness.safety.interlock;

/** How far a run has come with power. Limits may differ from phase to phase. */
public enum Phase {
    /** The output is off; nothing trips, but what objects to power is known. */
    OFF,
    /** Input on, remote turn-on off: the unit drains next to nothing. */
    STANDBY,
    /** Input raised in steps with the remote turn-on off. */
    FIRST_POWER,
    /** The remote turn-on went on and the filter capacitors fill. */
    INRUSH,
    /** The inrush window is over; the rails have not been seen up yet, or are allowed to go low. */
    WORKING,
    /** The rails were seen up; from here a low rail is outside. */
    UP;

    /** True when the output is on or may come on in this phase. */
    public boolean powered() {
        return this != OFF;
    }
}
