package railwitness.analysis.verdict;

/** How uncertainty is taken into account; chosen in the design sheet and printed with every verdict. */
public enum DecisionRule {
    /** Guard band w = 0: the value alone decides; the risk at the limit is up to 50 % (ILAC-G8:09/2019, 4.2.1). */
    SIMPLE_ACCEPTANCE("simple acceptance, no guard band: a false pass or fail is up to 50 % likely at the limit"),
    /** Guard band w = U, four outcomes (ILAC-G8:09/2019, 4.2.3); less than 2.5 % of passes at the limit are false. */
    GUARD_BAND("guard band as wide as U at 95 %: a pass beyond it is false with less than 2.5 % probability");

    private final String words;

    DecisionRule(String words) {
        this.words = words;
    }

    /** The rule in words, for print. */
    public String words() {
        return words;
    }

    /**
     * The outcome of a value against a limit.
     *
     * @param margin of the value inside its limit, negative outside, see {@link Limit#margin(double)}
     * @param expanded U at 95 %, 0 or more, same unit
     */
    public Outcome outcome(double margin, double expanded) {
        double guardBand = this == SIMPLE_ACCEPTANCE ? 0 : expanded;
        if (margin >= 0) {
            return margin >= guardBand ? Outcome.PASS : Outcome.CONDITIONAL_PASS;
        }
        return -margin > guardBand ? Outcome.FAIL : Outcome.CONDITIONAL_FAIL;
    }
}
