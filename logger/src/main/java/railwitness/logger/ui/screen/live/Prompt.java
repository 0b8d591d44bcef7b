package railwitness.logger.ui.screen.live;

import java.util.function.Consumer;

/**
 * Something a person is to do or to read.
 *
 * @param answer told what was typed, on the run's thread
 */
public record Prompt(String sentence, Kind kind, Consumer<String> answer) {
    /** What the person answers with. */
    public enum Kind {
        /** A key, once it is done. */
        ACT,
        /** A number. */
        NUMBER,
        /** The word that the disconnect is open, typed. */
        DISCONNECT,
        /** Asks for the output of a supply with knobs to be switched off, and for a word that it is. */
        SWITCH_OFF
    }
}
