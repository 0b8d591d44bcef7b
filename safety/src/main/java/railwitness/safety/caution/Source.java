package railwitness.safety.caution;

/** What feeds the unit. */
public enum Source {
    SUPPLY("supply"),
    SUPPLY_WITH_BATTERY("supply with battery"),
    BATTERY("battery");

    private final String word;

    Source(String word) {
        this.word = word;
    }

    /** As written in the bench sheet. */
    public String word() {
        return word;
    }

    /**
     * Finds a source by its word in the bench sheet.
     *
     * @throws IllegalArgumentException naming the word and what is allowed
     */
    public static Source of(String word) {
        for (Source source : values()) {
            if (source.word.equals(word)) {
                return source;
            }
        }
        throw new IllegalArgumentException("source '" + word + "' must be supply, supply with battery or battery");
    }

    /** True when switching the supply off leaves the unit without input. */
    public boolean endsWithTheSupply() {
        return this == SUPPLY;
    }
}
