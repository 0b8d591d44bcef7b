package railwitness.drivers.instrument;

/** A state of an instrument in which its readings say nothing of the unit. */
public enum Condition {
    /** The supply holds its current limit, not its voltage. */
    LIMITING,
    /** The supply's own protection switched it off. */
    PROTECTION,
    /** The load cannot hold its set point. */
    NOT_HOLDING,
    /** The output is said to be off. */
    OUTPUT_OFF
}
