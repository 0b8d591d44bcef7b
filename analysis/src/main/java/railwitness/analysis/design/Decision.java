package railwitness.analysis.design;

/** How uncertainty enters a verdict: {@code [decision] rule}. */
public enum Decision {
    /** The limit is drawn in by the expanded uncertainty before anything passes. */
    GUARD_BAND_U("guard band U"),
    /** The value alone is held against the limit. */
    SIMPLE_ACCEPTANCE("simple acceptance");

    private final String word;

    Decision(String word) {
        this.word = word;
    }

    /** As written in the sheet and printed with the verdict. */
    public String word() {
        return word;
    }

    /** Finds a rule by its word; throws IllegalArgumentException naming those allowed. */
    public static Decision of(String word) {
        return SheetWord.find(values(), Decision::word, "rule", word);
    }
}
