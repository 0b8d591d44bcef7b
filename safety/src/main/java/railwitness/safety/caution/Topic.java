package railwitness.safety.caution;

/** What a caution is about, with the sentences that hold for every unit. */
public enum Topic {
    NO_EMERGENCY_STOP(
            "Software is no emergency stop",
            "always, as a WARNING",
            "This program looks at limits some tens of times a second. It cannot save a transistor, and it can fail."
                    + " What bounds the damage is the supply's current limit and protections and the fuse at the unit's"
                    + " input. Keep a disconnect within the reach of your hand and open it when in doubt. Where the bench"
                    + " sheet accepts a run without the guardian, nothing switches off when this program or its"
                    + " computer fails: then stay beside the disconnect. What ends this program and its guardian together"
                    + " leaves the output on, unless the supply itself switches off when it hears nothing."),
    RAIL_VOLTAGE(
            "Voltage between the rails",
            "from 60 V d.c. as a WARNING, from 120 V d.c. as a DANGER, worked out without load at the highest input"
                    + " of the plan",
            "Both rails together count, not one against 0 V. Work with one hand, never alone, and touch nothing while"
                    + " the output is on."),
    STORED_ENERGY(
            "Energy in the capacitors",
            "from 1 J as a CAUTION, from 100 J as a WARNING; at 100 V and more from 10 J as a DANGER",
            "Filter capacitors stay charged after power is off. Do not short them with a tool: discharge them"
                    + " through a resistor, and measure before you touch."),
    CAPACITOR_RATING(
            "Capacitors near or above their rating",
            "from nine tenths of the rating as a CAUTION, above the rating as a WARNING; power is then refused",
            "A capacitor above its rating can burst and throw hot electrolyte. Wear eye protection."),
    INPUT_CURRENT(
            "Strong current at the input",
            "from 10 A as a WARNING",
            "Low voltage does not mean low danger: a ring, a watch strap or a dropped tool across the input burns at"
                    + " once. Take metal off your hands, tighten the terminals, and use leads that carry the current."),
    FUSE(
            "Fuse at the unit's input",
            "without a fuse, or with one far above the highest current, as a WARNING; with one below it as a NOTICE",
            "The fuse stands at the source's side of the leads and protects them and you when everything else"
                    + " fails."),
    HOT_PARTS(
            "Hot parts",
            "where a part may reach 60 degC, as a CAUTION",
            "Heat sinks, load resistors and the transformer stay hot long after power is off. Keep what burns away"
                    + " from them."),
    JOINED_TERMINALS(
            "Terminals that are earthed or joined",
            "for each pair that the bench names, as a WARNING",
            "A scope's clip, the shield of a serial adapter or the joined negatives of two loads can short a rail or"
                    + " bypass a shunt. Check with a meter, power off, that the terminals you join are at the same"
                    + " potential."),
    SOURCE(
            "A battery feeds the unit",
            "as a DANGER; power is refused unless a contactor is driven and its opening is read back",
            "Switching a supply off does nothing while a battery is there, and a battery delivers hundreds of amperes"
                    + " into a short. Disconnect the battery and feed the unit from a supply alone."),
    KNOBS(
            "A supply with knobs only",
            "where the bench's supply has no serial line, as a DANGER",
            "At a limit, at a trip and at the off button this program can only tell you, large and with a bell, to"
                    + " switch off: your hand is what switches. A supply with a serial line would be off within a second,"
                    + " would be told its over-voltage and over-current protection, would be watched several times a"
                    + " second, and a second process would switch it off when this program fails. Here nothing of that is"
                    + " so: what happens between two readings is not seen. Keep your hand at the output switch or the"
                    + " disconnect while power is on, and set the current limit as it is asked for. Power counts as off"
                    + " only when you have said so and every rail was read low."),
    AFTER_POWER(
            "After power",
            "always, as a WARNING",
            "Output off does not mean safe: the rails are watched until they are below 60 V between them and then"
                    + " below the touch limit. Measure them yourself before you touch, even when the screen says that"
                    + " they are low."),
    LOCAL_CODES(
            "Local codes and licensed practice",
            "always, as a NOTICE",
            "These cautions follow from the numbers of the sheets alone. They replace neither local codes nor the"
                    + " judgement of a licensed or trained person, and where these differ, follow them.");

    private final String title;
    private final String when;
    private final String text;

    Topic(String title, String when, String text) {
        this.title = title;
        this.when = when;
        this.text = text;
    }

    public String title() {
        return title;
    }

    /** When it is given, and with which signal word. */
    public String when() {
        return when;
    }

    /** Plain sentences that hold for every unit. */
    public String text() {
        return text;
    }
}
