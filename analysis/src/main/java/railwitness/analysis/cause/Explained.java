package railwitness.analysis.cause;

/** Whether what is off is explained. */
public enum Explained {
    NOTHING_OFF("nothing off"),
    BY_A_CAUSE("by a cause"),
    NO_KNOWN_FAULT("no known fault");

    private final String word;

    Explained(String word) {
        this.word = word;
    }

    /** As written in findings. */
    public String word() {
        return word;
    }
}
