package railwitness.drivers.instrument;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import railwitness.drivers.instrument.Dialect.State;
import railwitness.drivers.scpi.SwitchState;

/** What the reply to a question for a state tells. */
final class StateReply {
    private static final int HIGHEST_REGISTER = 65535;

    private StateReply() {}

    /**
     * Whether this can be the reply: for a register a whole number from zero to 65535, for words a word, or 0 or 1. The
     * reading of a voltage is neither.
     */
    static boolean fits(State state, String reply) {
        return state.bits().isEmpty()
                ? SwitchState.of(reply).isPresent() || bare(reply).matches("[A-Za-z][A-Za-z_ -]{0,15}")
                : register(reply) >= 0;
    }

    /** The conditions it tells; for a reply that fits. */
    static Set<Condition> conditions(State state, String reply) {
        Set<Condition> found = EnumSet.noneOf(Condition.class);
        for (Map.Entry<Condition, List<String>> entry : state.words().entrySet()) {
            if (entry.getValue().stream().anyMatch(word -> says(reply, word))) {
                found.add(entry.getKey());
            }
        }
        state.bits().forEach((condition, bits) -> {
            if ((register(reply) & bits) != 0) {
                found.add(condition);
            }
        });
        return found;
    }

    /* 0 and OFF say the same, however they are spelt. */
    private static boolean says(String reply, String word) {
        return bare(reply).equalsIgnoreCase(word)
                || SwitchState.of(word).isPresent() && SwitchState.of(word).equals(SwitchState.of(bare(reply)));
    }

    private static String bare(String reply) {
        return reply.replace("\"", "").strip().toUpperCase(Locale.ROOT);
    }

    private static int register(String reply) {
        String word = reply.strip();
        boolean whole = word.matches("\\+?\\d{1,9}(?:\\.0*)?");
        int value = whole ? Integer.parseInt(word.replaceFirst("\\..*", "").replace("+", "")) : -1;
        return value <= HIGHEST_REGISTER ? value : -1;
    }
}
