package railwitness.logger.reporting.comparing;

import railwitness.analysis.uncertainty.Coverage;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/**
 * A later value against the first. What both have from the same instrument on the same range falls out of the
 * difference (GUM F.1.2.3), but for an allowance for the instrument's drift from one session to the next, so that its
 * uncertainty can be much smaller than either's.
 *
 * @param difference later less first, in the value's unit
 * @param coverage its expanded uncertainty at 95 %
 * @param apart standard uncertainty the difference would have if the two shared nothing, in the value's unit
 */
public record Change(Estimate difference, Coverage coverage, double apart, Answer answer) {
    /**
     * What an instrument may have drifted between two sessions, as a share of what it may be off by at all (common
     * practice, no source): so much of a common error does not cancel.
     */
    public static final double DRIFT_SHARE = 0.05;

    private static final double COVERAGE = 0.95;

    /** From one value to another of the same unit. */
    public static Change of(Estimate first, Estimate later) {
        Estimate difference = drifted(later.minus(first), Math.hypot(first.u(), later.u()));
        Coverage coverage = difference.coverage(COVERAGE);
        return new Change(
                difference, coverage, Math.hypot(first.u(), later.u()), answer(difference, coverage.expanded()));
    }

    private static Estimate drifted(Estimate difference, double apart) {
        double cancelled = Math.sqrt(Math.max(0, apart * apart - difference.u() * difference.u()));
        return cancelled > 0
                ? difference.with(Influence.normal("short-term drift of the instruments", DRIFT_SHARE * cancelled, "")
                        .times(1))
                : difference;
    }

    private static Answer answer(Estimate difference, double expanded) {
        if (!difference.known()) {
            return Answer.NOT_KNOWN;
        }
        return Math.abs(difference.value()) > expanded ? Answer.REAL : Answer.NOT_SHOWN;
    }
}
