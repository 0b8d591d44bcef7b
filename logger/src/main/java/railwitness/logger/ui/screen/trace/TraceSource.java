package railwitness.logger.ui.screen.trace;

/** Where the readings of a trace come from. */
public interface TraceSource {
    /**
     * Draws a stretch into columns, keeping the lowest and the highest number of each.
     *
     * @param fromSeconds left edge of the first column, s of the session
     * @param toSeconds right edge of the last one, after the left
     * @param columns how many, 1 or more
     */
    TraceColumns columns(double fromSeconds, double toSeconds, int columns);
}
