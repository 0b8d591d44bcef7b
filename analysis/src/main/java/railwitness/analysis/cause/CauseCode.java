package railwitness.analysis.cause;

import java.util.List;

/** The faults a cause may name. */
public enum CauseCode {
    SHORTED_TURN(
            "shorted-turn",
            "a turn of the transformer is shorted",
            "lift the secondary off the rectifier: if the no-load current stays, the transformer takes it; then compare"
                    + " the inductance of both primary halves with the sheet"),
    WRONG_TURNS(
            "wrong-turns",
            "the windings have other turns than the sheet says",
            "drive one half at low voltage from a generator and measure each half's ratio"),
    WEAK_HALF(
            "weak-half",
            "one half contributes little: half of a secondary, or one drive side",
            "with power off measure the resistance and, driven by a generator, the voltage of each secondary half: open"
                    + " shows no voltage, a turn short shows that much less; then look at both drains"),
    DEAD_DRIVE(
            "dead-drive", "one drive side gives nothing", "look at both gates and both drains: one side stands still"),
    DEAD_RECTIFIER(
            "dead-rectifier",
            "a rectifier of this rail does not conduct",
            "with power off test both diodes of this rail and their joints"),
    SHORTED_RECTIFIER(
            "shorted-rectifier",
            "a rectifier or its rail is shorted",
            "with power off and rails discharged measure the diodes and the rail both ways"),
    SHORTED_SWITCH("shorted-switch", "a switch is shorted", "with power off measure drain to source of both switches"),
    LEAKY_SWITCH(
            "leaky-switch",
            "a switch, or the input, leaks while the unit is off",
            "with the remote turn-on off take out one switch after the other and watch the input current"),
    TIRED_CAPACITOR(
            "tired-capacitor",
            "the filter capacitor of this rail is tired",
            "measure its equivalent series resistance, or hold a good capacitor across it and read the ripple again"),
    LEAD_RESISTANCE(
            "lead-resistance",
            "too much resistance in leads, joints or switches",
            "at full load measure the drop along leads, fuse, joints and across each switch"),
    WEAK_CORE(
            "weak-core",
            "the core takes more than it should: cracked, gapped or of another grade",
            "look at the no-load current's waveform and measure the inductance of a primary half");

    private final String word;
    private final String text;
    private final String checkNext;

    CauseCode(String word, String text, String checkNext) {
        this.word = word;
        this.text = text;
        this.checkNext = checkNext;
    }

    /** The code as written in findings. */
    public String word() {
        return word;
    }

    /** What it says in a technician's words. */
    public String text() {
        return text;
    }

    /** What to measure next. */
    public String checkNext() {
        return checkNext;
    }

    /** Those that readings of means and ripple cannot tell from this one, whatever the numbers. */
    public List<CauseCode> alike() {
        return switch (this) {
            case SHORTED_TURN -> List.of(WEAK_CORE);
            case WEAK_CORE -> List.of(SHORTED_TURN);
            case WEAK_HALF -> List.of(WRONG_TURNS, DEAD_DRIVE);
            case DEAD_DRIVE -> List.of(WEAK_HALF);
            default -> List.of();
        };
    }
}
