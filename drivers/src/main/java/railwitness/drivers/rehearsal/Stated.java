package railwitness.drivers.rehearsal;

/**
 * The accuracy a data sheet states: share of the reading, share of the range, and a fixed part, added up.
 *
 * @param readingShare 0.0001 for 0.01 % of reading
 * @param rangeShare share of the range
 * @param offset fixed part in the quantity's unit
 * @param normal true when it is stated for 95 % of instruments (errors drawn from a normal distribution whose 95 % they
 *     are), false when it is a limit (drawn evenly from within)
 */
public record Stated(double readingShare, double rangeShare, double offset, boolean normal) {
    /** An ideal instrument. */
    public static final Stated EXACT = new Stated(0, 0, 0, false);

    public Stated {
        if (!(readingShare >= 0 && readingShare < 1) || !(rangeShare >= 0 && rangeShare < 1) || !(offset >= 0)) {
            throw new IllegalArgumentException("accuracy must be shares of 0 to 1 and an offset of zero or more, not "
                    + readingShare + ", " + rangeShare + ", " + offset);
        }
    }

    /** A limit from per cent of reading, per cent of range and a fixed part. */
    public static Stated limit(double readingPercent, double rangePercent, double offset) {
        return new Stated(readingPercent / 100, rangePercent / 100, offset, false);
    }

    /** Largest error at a value on a range. */
    public double halfWidth(double value, double range) {
        return readingShare * Math.abs(value) + rangeShare * range + offset;
    }
}
