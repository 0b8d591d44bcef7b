package railwitness.logger.ui.screen.live;

import java.util.Arrays;
import railwitness.logger.ui.screen.trace.TraceColumns;
import railwitness.logger.ui.screen.trace.TraceSource;

/**
 * A channel's whole run in bounded memory: of every span the lowest and the highest number, so that no spike is lost.
 * When all spans are used, each two become one. Filled by the run's thread, drawn by the screen's.
 */
public final class TraceKeeper implements TraceSource {
    private static final int MOST = 8192;
    private static final double FINEST_SECONDS = 0.02;

    private final float[] lowest = new float[MOST];
    private final float[] highest = new float[MOST];
    private final boolean[] known = new boolean[MOST];
    private double spanSeconds = FINEST_SECONDS;

    /** @param seconds of the session, zero or more */
    synchronized void add(double seconds, double value) {
        while (seconds / spanSeconds >= MOST) {
            halve();
        }
        put((int) (seconds / spanSeconds), (float) value, (float) value);
    }

    private void put(int span, float low, float high) {
        lowest[span] = known[span] ? Math.min(lowest[span], low) : low;
        highest[span] = known[span] ? Math.max(highest[span], high) : high;
        known[span] = true;
    }

    private void halve() {
        spanSeconds *= 2;
        for (int span = 0; span < MOST; span++) {
            boolean had = known[span];
            known[span] = had && span == 0;
            if (had && span > 0) {
                put(span / 2, lowest[span], highest[span]);
            }
        }
    }

    @Override
    public synchronized TraceColumns columns(double fromSeconds, double toSeconds, int columns) {
        TraceColumns drawn = new TraceColumns(columns);
        int first = (int) Math.max(0, Math.floor(fromSeconds / spanSeconds));
        int last = (int) Math.min(MOST - 1.0, Math.ceil(toSeconds / spanSeconds));
        double perSecond = columns / (toSeconds - fromSeconds);
        for (int span = first; span <= last; span++) {
            if (known[span]) {
                int column = (int) Math.floor(((span + 0.5) * spanSeconds - fromSeconds) * perSecond);
                if (column >= 0 && column < columns) {
                    drawn.put(column, lowest[span], highest[span]);
                }
            }
        }
        return drawn;
    }

    synchronized void clear() {
        Arrays.fill(known, false);
        spanSeconds = FINEST_SECONDS;
    }
}
