package railwitness.analysis.supply;

/** Where the input voltage was measured. */
public enum InputSource {
    /** At the unit's own terminals. */
    TERMINALS("at the unit's terminals"),
    /** By the supply at its own output: the leads' drop is inside. */
    SUPPLY_READ_BACK("read back at the supply, the leads' drop inside");

    private final String words;

    InputSource(String words) {
        this.words = words;
    }

    /** For findings: where it was measured. */
    public String words() {
        return words;
    }
}
