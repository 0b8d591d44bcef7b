package railwitness.logger.reporting.comparing;

import railwitness.analysis.uncertainty.Coverage;
import railwitness.analysis.uncertainty.Estimate;

/**
 * A later value against the first. What both have from the same instrument on the same range falls out of the
 * difference (GUM F.1.2.3), so that its uncertainty can be much smaller than either's.
 *
 * @param difference later less first, in the value's unit
 * @param coverage its expanded uncertainty at 95 %
 * @param apart standard uncertainty the difference would have if the two shared nothing, in the value's unit
 */
public record Change(Estimate difference, Coverage coverage, double apart, Answer answer) {
    private static final double COVERAGE = 0.95;

    /** From one value to another of the same unit. */
    public static Change of(Estimate first, Estimate later) {
        Estimate difference = later.minus(first);
        Coverage coverage = difference.coverage(COVERAGE);
        return new Change(
                difference, coverage, Math.hypot(first.u(), later.u()), answer(difference, coverage.expanded()));
    }

    private static Answer answer(Estimate difference, double expanded) {
        if (!difference.known()) {
            return Answer.NOT_KNOWN;
        }
        return Math.abs(difference.value()) > expanded ? Answer.REAL : Answer.NOT_SHOWN;
    }
}
