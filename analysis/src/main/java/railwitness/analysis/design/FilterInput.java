package railwitness.analysis.design;

/** What the rectifier feeds; it decides how rail, ratio and duty hang together. */
public enum FilterInput {
    /** The rectifier charges the capacitor directly: the rail follows the peak, turns ratio times input. */
    CAPACITOR("capacitor"),
    /** A choke stands before the capacitor: the rail follows the mean, turns ratio times duty times input. */
    CHOKE("choke");

    private final String word;

    FilterInput(String word) {
        this.word = word;
    }

    /** As written in the sheet. */
    public String word() {
        return word;
    }

    /** Finds a kind by its word; throws IllegalArgumentException naming those allowed. */
    public static FilterInput of(String word) {
        return SheetWord.find(values(), FilterInput::word, "filter", word);
    }
}
