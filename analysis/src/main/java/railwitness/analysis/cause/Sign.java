package railwitness.analysis.cause;

/** What is looked at, and how a difference is taken: of logarithms where the scale counts, else of values. */
enum Sign {
    STANDBY("standby current", "A", false),
    IDLE("no-load input power", "W", false),
    LEVEL("rail at light load", "V", true),
    RATIO("effective turns ratio", "", true),
    SAG("output resistance, mean of the rails", "ohm", true),
    SAG_DIFFERENCE("output resistance, first rail over second", "", true),
    LOAD_LOSS("loss that the load adds", "W", true),
    RIPPLE("ripple, mean of the rails", "V", true),
    RIPPLE_DIFFERENCE("ripple, first rail over second", "", true),
    AT_CYCLE("share of the ripple at the switching frequency", "", false),
    SOURCE("resistance from the source to the terminals", "ohm", false);

    private final String words;
    private final String unit;
    private final boolean logarithmic;

    Sign(String words, String unit, boolean logarithmic) {
        this.words = words;
        this.unit = unit;
        this.logarithmic = logarithmic;
    }

    String words() {
        return words;
    }

    String unit() {
        return unit;
    }

    boolean logarithmic() {
        return logarithmic;
    }
}
