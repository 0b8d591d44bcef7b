package railwitness.logger.ui.screen.trace;

/** Lowest and highest number of each pixel column; a column may have none. */
public final class TraceColumns {
    private final float[] lowest;
    private final float[] highest;
    private final boolean[] known;

    /** @param columns how many, none of them with a number yet */
    public TraceColumns(int columns) {
        lowest = new float[columns];
        highest = new float[columns];
        known = new boolean[columns];
    }

    /** One more number, or a stretch of them, falls into a column. */
    public void put(int column, float low, float high) {
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

    /** How many columns hold a number. */
    public int known() {
        int count = 0;
        for (boolean one : known) {
            count += one ? 1 : 0;
        }
        return count;
    }

    /** The first column that is not as in the other picture of as many columns; {@link #size} when all are. */
    public int firstChange(TraceColumns other) {
        int column = 0;
        while (column < known.length && same(other, column)) {
            column++;
        }
        return column;
    }

    /** The last column that is not as in the other picture; -1 when all are. */
    public int lastChange(TraceColumns other) {
        int column = known.length - 1;
        while (column >= 0 && same(other, column)) {
            column--;
        }
        return column;
    }

    private boolean same(TraceColumns other, int column) {
        return known[column] == other.known[column]
                && lowest[column] == other.lowest[column]
                && highest[column] == other.highest[column];
    }
}
