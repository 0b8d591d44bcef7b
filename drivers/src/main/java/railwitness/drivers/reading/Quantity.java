package railwitness.drivers.reading;

/** What is measured at a node, with its SI unit and the short unit used in file columns. */
public enum Quantity {
    VOLTAGE("voltage", "V"),
    CURRENT("current", "A"),
    RIPPLE("ripple", "V"),
    POWER("power", "W"),
    RESISTANCE("resistance", "ohm"),
    TEMPERATURE("temperature", "degC"),
    FREQUENCY("frequency", "Hz");

    private final String word;
    private final String unit;

    Quantity(String word, String unit) {
        this.word = word;
        this.unit = unit;
    }

    /** The trade's word, as written after the dot of a channel. */
    public String word() {
        return word;
    }

    /** SI unit (temperatures in degrees Celsius) as written in files: V, A, W, ohm, degC. */
    public String unit() {
        return unit;
    }

    /**
     * Finds a quantity by its word.
     *
     * @throws IllegalArgumentException naming the word and those that are known
     */
    public static Quantity of(String word) {
        for (Quantity quantity : values()) {
            if (quantity.word.equals(word)) {
                return quantity;
            }
        }
        throw new IllegalArgumentException("unknown quantity '" + word
                + "'; known are voltage, current, ripple, power, resistance, temperature, frequency");
    }
}
