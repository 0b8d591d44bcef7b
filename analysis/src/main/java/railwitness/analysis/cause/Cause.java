package railwitness.analysis.cause;

import java.util.List;
import java.util.Optional;

/**
 * One probable cause.
 *
 * @param code which fault
 * @param rail on which rail, where it is of one
 * @param place winding half, switch or the like, where it can be told
 * @param share 0 to 1: how probable among all that were tried, 'sound' and 'something else' included
 * @param fit 0 to 1: probability of readings at least as far from its predictions if it were the one
 * @param supports what speaks for it, against nothing being wrong
 * @param against what speaks against it
 * @param alike others that these readings do not tell from it
 * @param checks what to do next, cheapest and safest first
 */
public record Cause(
        CauseCode code,
        Optional<String> rail,
        Optional<String> place,
        double share,
        double fit,
        List<String> supports,
        List<String> against,
        List<CauseCode> alike,
        List<String> checks) {
    public Cause {
        supports = List.copyOf(supports);
        against = List.copyOf(against);
        alike = List.copyOf(alike);
        checks = List.copyOf(checks);
    }

    /** A cause of which only a share is known. */
    public Cause(
            CauseCode code,
            Optional<String> rail,
            double share,
            List<String> supports,
            List<String> against,
            List<CauseCode> alike) {
        this(code, rail, Optional.empty(), share, share, supports, against, alike, code.checks());
    }

    /** What it says in a technician's words. */
    public String text() {
        return code.text();
    }

    /** What to measure first. */
    public String checkNext() {
        return checks.get(0);
    }
}
