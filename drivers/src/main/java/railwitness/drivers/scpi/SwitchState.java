package railwitness.drivers.scpi;

import java.util.Locale;
import java.util.Optional;

/**
 * The answer to a question for a switch, such as {@code OUTP?}: boolean data of IEEE 488.2 and SCPI-1999. 1 or ON means
 * on, 0 or OFF means off, in either case, also written {@code +0}, {@code 00} or {@code 1.0}. Anything else, such as the
 * reading of a small current, is no state: it is then not known whether the switch is on.
 */
public enum SwitchState {
    ON,
    OFF;

    private static final int LONGEST = 16;

    /** The state a reply tells; empty where it tells none. */
    public static Optional<SwitchState> of(String reply) {
        String word = reply.length() > LONGEST ? "" : reply.strip().toUpperCase(Locale.ROOT);
        if (word.equals("ON") || word.matches("\\+?0*1(?:\\.0*)?(?:E[+-]?0+)?")) {
            return Optional.of(ON);
        }
        if (word.equals("OFF") || word.matches("[+-]?0+(?:\\.0*)?(?:E[+-]?\\d{1,3})?")) {
            return Optional.of(OFF);
        }
        return Optional.empty();
    }
}
