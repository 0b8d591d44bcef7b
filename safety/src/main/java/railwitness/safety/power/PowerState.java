package railwitness.safety.power;

/** What the supply's output is doing, as far as it is known. */
public enum PowerState {
    /** Nothing was told to the supply and it has not said anything. */
    NOT_KNOWN("output not known"),
    /** Off and read back. */
    OFF("output off"),
    /** Off, with voltage, limit and protections set and read back. */
    ARMED("armed, output off"),
    /** On, or told to be on. */
    ON("output ON"),
    /** Off was sent; the read-back is awaited. */
    SWITCHING_OFF("switching off"),
    /** Off and read back; the rails are still watched. */
    DISCHARGING("output off, rails discharging"),
    /** Off was sent again and again and is not confirmed: open the disconnect. */
    NOT_CONFIRMED("NOT CONFIRMED OFF: open the disconnect");

    private final String words;

    PowerState(String words) {
        this.words = words;
    }

    /** In words for the person. */
    public String words() {
        return words;
    }
}
