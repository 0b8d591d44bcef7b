package railwitness.analysis.contradiction;

/** What kind of impossible it is, in the order in which a person is told. */
public enum ContradictionCode {
    /** The record was altered after it was written: nothing in it can be relied on. */
    BROKEN_CHAIN("broken-chain"),
    /** A rail, or the current of its load, has the wrong sign. */
    POLARITY("polarity"),
    /** Current or voltage of the input below zero. */
    NEGATIVE_INPUT("negative-input"),
    /** Two readings stand in each other's place. */
    EXCHANGED_LEADS("exchanged-leads"),
    /** A reading that stays the same to its last digit over steps that must change it. */
    FROZEN("frozen"),
    /** Readings of one average that are not of one state. */
    SCATTERED("scattered"),
    /** Two that see one thing differ beyond both accuracies. */
    INSTRUMENTS_DISAGREE("instruments-disagree"),
    /** More power comes out than goes in, or more goes in than the supply can give. */
    POWER_BALANCE("power-balance");

    private final String word;

    ContradictionCode(String word) {
        this.word = word;
    }

    /** As other programs read it. */
    public String word() {
        return word;
    }
}
