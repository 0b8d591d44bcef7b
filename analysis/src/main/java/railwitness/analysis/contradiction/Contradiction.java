package railwitness.analysis.contradiction;

import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;

/**
 * Readings that cannot all be true.
 *
 * @param code which kind
 * @param text what was seen and why it cannot be, one sentence for a technician
 * @param check where to look, the likeliest first
 * @param doubted channels such as {@code input.current} of which one at least is wrong; empty: all of them
 */
public record Contradiction(ContradictionCode code, String text, String check, Set<String> doubted) {
    public Contradiction {
        doubted = Collections.unmodifiableSet(new TreeSet<>(doubted));
        if (text.isBlank() || check.isBlank()) {
            throw new IllegalArgumentException("contradiction " + code + " needs a text and what to check");
        }
    }

    /**
     * A record that was altered.
     *
     * @param text what does not fit
     */
    public static Contradiction brokenChain(String text) {
        return new Contradiction(
                ContradictionCode.BROKEN_CHAIN,
                text,
                "take the session from where it was first kept; verify names the place",
                Set.of());
    }

    /** Whether what was worked out from these channels cannot be relied on. */
    public boolean concerns(Set<String> channels) {
        return doubted.isEmpty() || channels.stream().anyMatch(doubted::contains);
    }
}
