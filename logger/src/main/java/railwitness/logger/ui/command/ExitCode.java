package railwitness.logger.ui.command;

import java.util.LinkedHashMap;
import java.util.Map;

/** How a command ends, for scripts. */
final class ExitCode {
    /** Done: fit, or nothing to judge. */
    static final int DONE = 0;
    /** A requirement failed, the run tripped, or a certificate does not say what its session says. */
    static final int NOT_FIT = 1;
    /** Wrong use or bad input. */
    static final int BAD_INPUT = 2;
    /** An instrument or a line did not do its part. */
    static final int INSTRUMENT = 3;
    /** The session file could not be written or read, or is not as it was recorded. */
    static final int STORE = 4;
    /** The program could not go on: no memory left, a part missing, a mistake of its own. Says nothing of any session. */
    static final int MACHINE = 5;

    private ExitCode() {}

    /** What each code means, in order, as {@code --help} prints it. */
    static Map<String, String> words() {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("" + DONE, "Done: fit to return, or nothing to judge.");
        words.put("" + NOT_FIT, "Not fit to return, tripped, or a certificate that is not of its session.");
        words.put("" + BAD_INPUT, "Wrong use or bad input.");
        words.put("" + INSTRUMENT, "An instrument or a line did not do its part.");
        words.put("" + STORE, "The session cannot be read or written, or is not as it was recorded.");
        words.put("" + MACHINE, "The computer or the program could not go on; nothing was judged.");
        return words;
    }
}
