package railwitness.logger.screen.live;

/** Lowest and highest number of each pixel column; a column may have none. */
public final class TraceColumns {
    private final float[] lowest;
    private final float[] highest;
    private final boolean[] known;

    TraceColumns(int columns) {
        lowest = new float[columns];
        highest = new float[columns];
        known = new boolean[columns];
    }

    void put(int column, float low, float high) {
        lowest[column] = known[column] ? Math.min(lowest[column], low) : low;
        highest[column] = known[column] ? Math.max(highest[column], high) : high;
        known[column] = true;
    }

    public int size() {
        return known.length;
    }

    /** Whether anything was read there. */
    public boolean has(int column) {
        return known[column];
    }

    /** Only where {@link #has}. */
    public float lowest(int column) {
        return lowest[column];
    }

    /** Only where {@link #has}. */
    public float highest(int column) {
        return highest[column];
    }
}
