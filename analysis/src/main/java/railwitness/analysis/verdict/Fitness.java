package railwitness.analysis.verdict;

/** The verdict on the whole unit. */
public enum Fitness {
    FIT("fit"),
    NOT_FIT("not fit"),
    NOT_JUDGED("not judged");

    private final String words;

    Fitness(String words) {
        this.words = words;
    }

    /** The words printed and kept. */
    public String words() {
        return words;
    }
}
