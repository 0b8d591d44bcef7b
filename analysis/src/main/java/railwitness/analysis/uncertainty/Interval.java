package railwitness.analysis.uncertainty;

/**
 * A closed interval in the unit of the estimate it belongs to.
 *
 * @param low its lower end
 * @param high its upper end, not below the lower
 */
public record Interval(double low, double high) {
    public Interval {
        if (!(low <= high)) {
            throw new IllegalArgumentException("interval from " + low + " to " + high + ": must not run backwards");
        }
    }

    /** Whether the value lies in it, ends included. */
    public boolean holds(double value) {
        return low <= value && value <= high;
    }

    /** Half of its width. */
    public double halfWidth() {
        return (high - low) / 2;
    }
}
