package railwitness.safety.caution;

/** The numbers from which cautions follow, each with where it comes from. */
public enum Threshold {
    LOW_VOLTAGE(60, "V d.c.", "upper end of class ES1, IEC 62368-1 (from memory)"),
    HIGH_VOLTAGE(120, "V d.c.", "upper end of class ES2, IEC 62368-1 (from memory)"),
    LABORATORY_VOLTAGE(
            100, "V d.c.", "shock threshold, electrical safety pages of Lawrence Berkeley National Laboratory"),
    HIGH_ENERGY(10, "J", "capacitors at 100 V and more, the same pages"),
    THERMAL_ENERGY(100, "J", "capacitors below 100 V, the same pages"),
    SPARK_ENERGY(1, "J", "a spark that throws hot metal; common practice, no source"),
    STRONG_CURRENT(10, "A", "a ring or tool across it glows; common practice, no source"),
    HOT_SURFACE(60, "degC", "bare metal that burns at a touch; common practice, no source"),
    RATING_SHARE(0.9, "of the rating", "a capacitor kept below nine tenths of its rating; common practice, no source");

    private final double value;
    private final String unit;
    private final String source;

    Threshold(double value, String unit, String source) {
        this.value = value;
        this.unit = unit;
        this.source = source;
    }

    public double value() {
        return value;
    }

    public String unit() {
        return unit;
    }

    public String source() {
        return source;
    }
}
