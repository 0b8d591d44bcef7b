package railwitness.logger.recording.record;

import java.util.Locale;
import railwitness.drivers.instrument.KnobTurn;

/** What is asked of the person at a supply that has only knobs. */
final class KnobWords {
    /** Asked until it is answered by a word. */
    static final String OFF = "Switch the supply's output OFF by hand, or open the disconnect";

    private KnobWords() {}

    static String sentence(KnobTurn turn) {
        return turn.before()
                        .map(shown -> number(shown, turn) + " is not " + number(turn.value(), turn) + ". ")
                        .orElse("")
                + asked(turn);
    }

    private static String asked(KnobTurn turn) {
        String value = number(turn.value(), turn);
        return switch (turn.kind()) {
            case SET_VOLTS -> "Set the supply's voltage to " + value + " and type the volts its display shows";
            case SET_LIMIT ->
                "Set the supply's current limit to " + value
                        + " and type the amperes it shows for it (by its limit key, or" + " the mark at the knob)";
            case SWITCH_ON ->
                "Switch the supply's output ON, your hand stays there, and type the volts its display shows";
            case LOOK_VOLTS -> "Type the volts that the supply's display shows";
            case LOOK_AMPS -> "Type the amperes that the supply's display shows";
        };
    }

    private static String number(double value, KnobTurn turn) {
        return String.format(Locale.ROOT, "%.4g %s", value, turn.kind().unit());
    }
}
