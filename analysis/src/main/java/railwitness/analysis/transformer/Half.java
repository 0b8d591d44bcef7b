package railwitness.analysis.transformer;

/** One of the four windings of a push-pull transformer; both pairs have a centre tap. */
public enum Half {
    PRIMARY_A("primary A"),
    PRIMARY_B("primary B"),
    SECONDARY_A("secondary A"),
    SECONDARY_B("secondary B");

    private final String words;

    Half(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    public boolean isPrimary() {
        return this == PRIMARY_A || this == PRIMARY_B;
    }
}
