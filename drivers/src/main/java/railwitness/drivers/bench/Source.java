package railwitness.drivers.bench;

/** What feeds the unit's input. */
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

    /** True when switching the supply off leaves the unit without input. */
    public boolean endsWithTheSupply() {
        return this == SUPPLY;
    }
}
