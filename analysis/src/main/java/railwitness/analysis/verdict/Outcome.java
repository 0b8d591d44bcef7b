package railwitness.analysis.verdict;

/** What a requirement came to, from best to worst (ILAC-G8:09/2019, non-binary statement with guard band). */
public enum Outcome {
    PASS("pass"),
    CONDITIONAL_PASS("conditional pass"),
    NOT_JUDGED("not judged"),
    CONDITIONAL_FAIL("conditional fail"),
    FAIL("fail");

    private final String words;

    Outcome(String words) {
        this.words = words;
    }

    /** The words printed and kept. */
    public String words() {
        return words;
    }

    /** Whether it keeps the unit from being fit. */
    public boolean unfit() {
        return this == FAIL || this == CONDITIONAL_FAIL;
    }
}
