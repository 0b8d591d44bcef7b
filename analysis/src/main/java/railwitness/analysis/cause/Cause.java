package railwitness.analysis.cause;

import java.util.List;
import java.util.Optional;

/**
 * One probable cause.
 *
 * @param code which fault
 * @param rail on which rail, where it is of one
 * @param fit 0 to 1: its share of the likelihood among all faults tried and 'nothing wrong', each weighed alike, times the
 *     probability of readings at least as far from its predictions if it were the one
 * @param supports what speaks for it, against nothing being wrong
 * @param against what speaks against it
 * @param alike others that these readings do not tell from it
 */
public record Cause(
        CauseCode code,
        Optional<String> rail,
        double fit,
        List<String> supports,
        List<String> against,
        List<CauseCode> alike) {
    public Cause {
        supports = List.copyOf(supports);
        against = List.copyOf(against);
        alike = List.copyOf(alike);
    }

    /** What it says in a technician's words. */
    public String text() {
        return code.text();
    }

    /** What to measure next. */
    public String checkNext() {
        return code.checkNext();
    }
}
