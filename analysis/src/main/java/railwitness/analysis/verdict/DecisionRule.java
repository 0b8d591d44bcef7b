package railwitness.analysis.verdict;

/** How uncertainty is taken into account; chosen in the design sheet and printed with every verdict. */
public enum DecisionRule {
    /** Guard band w = 0: the value alone decides; the risk at the limit is up to 50 % (ILAC-G8:09/2019, 4.2.1). */
    SIMPLE_ACCEPTANCE("simple acceptance, no guard band: a false pass or fail is up to 50 % likely at the limit"),
    /**
     * Guard band w = U, four outcomes (ILAC-G8:09/2019, 4.2.3): less than 2.5 % of passes at the end of a band are false. Where
     * there is one limit only, the error can be harmful to one side only, and the one-sided U of 95 % is the band: 1.64 u of a
     * normal figure, 5 % (JCGM 106:2012, 8.3.2 and its table of single limits; ISO 14253-1; from memory).
     */
    GUARD_BAND(
            "guard band of 95 %, between two limits U, at a single one the one-sided U (1.64 u): a pass beyond it is false"
                    + " with less than 2.5 %, at a single limit 5 %");

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
     * @param width of the guard band, see {@link Limit#guardBand}, 0 or more, same unit
     */
    public Outcome outcome(double margin, double width) {
        double guardBand = this == SIMPLE_ACCEPTANCE ? 0 : width;
        if (margin >= 0) {
            return margin >= guardBand ? Outcome.PASS : Outcome.CONDITIONAL_PASS;
        }
        return -margin > guardBand ? Outcome.FAIL : Outcome.CONDITIONAL_FAIL;
    }
}
