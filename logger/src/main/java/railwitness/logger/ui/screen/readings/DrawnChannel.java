package railwitness.logger.ui.screen.readings;

import java.util.OptionalInt;
import railwitness.logger.recording.store.Envelope;
import railwitness.logger.ui.screen.trace.TraceColumns;
import railwitness.logger.ui.screen.trace.TraceSource;

/** One channel as it was last read from the file; drawn anew at another zoom until the file has answered. */
record DrawnChannel(Envelope envelope) {
    private static final double NANOS = 1e9;

    /** As a trace in another unit. */
    TraceSource in(double scale) {
        return (fromSeconds, toSeconds, columns) -> columns(fromSeconds, toSeconds, columns, scale);
    }

    /** @param scale from the channel's unit to the one drawn */
    TraceColumns columns(double fromSeconds, double toSeconds, int columns, double scale) {
        TraceColumns drawn = new TraceColumns(columns);
        double perSecond = columns / (toSeconds - fromSeconds);
        for (int i = 0; i < envelope.columns(); i++) {
            if (envelope.measured()[i] > 0) {
                int column = (int) Math.floor((middle(i) - fromSeconds) * perSecond);
                if (column >= 0 && column < columns) {
                    drawn.put(column, (float) (envelope.lowest()[i] * scale), (float) (envelope.highest()[i] * scale));
                }
            }
        }
        return drawn;
    }

    private double middle(int column) {
        return (envelope.edgeNanos()[column] + envelope.edgeNanos()[column + 1]) / 2.0 / NANOS;
    }

    /** The column with a number that is nearest to a moment. */
    OptionalInt nearest(double seconds) {
        int best = -1;
        for (int i = 0; i < envelope.columns(); i++) {
            if (envelope.measured()[i] > 0
                    && (best < 0 || Math.abs(middle(i) - seconds) < Math.abs(middle(best) - seconds))) {
                best = i;
            }
        }
        return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
    }

    /** How many numbers there are. */
    long count() {
        long count = 0;
        for (long one : envelope.measured()) {
            count += one;
        }
        return count;
    }

    double lowest() {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < envelope.columns(); i++) {
            lowest = envelope.measured()[i] > 0 ? Math.min(lowest, envelope.lowest()[i]) : lowest;
        }
        return lowest;
    }

    double highest() {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < envelope.columns(); i++) {
            highest = envelope.measured()[i] > 0 ? Math.max(highest, envelope.highest()[i]) : highest;
        }
        return highest;
    }

    /** Arithmetic mean of all numbers; only where there are some. */
    double mean() {
        double sum = 0;
        for (int i = 0; i < envelope.columns(); i++) {
            sum += envelope.measured()[i] > 0 ? envelope.mean()[i] * envelope.measured()[i] : 0;
        }
        return sum / count();
    }
}
