package railwitness.logger.recording.store.block;

import java.util.ArrayList;
import java.util.List;

/** Sums a block up, for each length of summary. */
public final class Summarizer {
    private Summarizer() {}

    /** The block's share of every summary it touches; a summary may occur twice when readings are out of order. */
    public static List<Summary> of(ReadingColumns readings) {
        List<Summary> all = new ArrayList<>();
        for (int span : Summary.spans()) {
            add(readings, span, all);
        }
        return all;
    }

    private static void add(ReadingColumns readings, int span, List<Summary> all) {
        int from = 0;
        while (from < readings.size()) {
            long start = Summary.startOf(readings.repliedNanos(from), span);
            int to = endOf(readings, from, start * 1_000_000_000L, (start + span) * 1_000_000_000L);
            all.add(sum(readings, from, to, span, start));
            from = to;
        }
    }

    private static int endOf(ReadingColumns readings, int from, long startNanos, long endNanos) {
        int to = from + 1;
        while (to < readings.size()
                && readings.repliedNanos(to) >= startNanos
                && readings.repliedNanos(to) < endNanos) {
            to++;
        }
        return to;
    }

    private static Summary sum(ReadingColumns readings, int from, int to, int span, long start) {
        long measured = 0;
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        double total = 0;
        for (int i = from; i < to; i++) {
            if (readings.kind(i) == ReadingColumns.MEASURED) {
                double value = readings.value(i);
                measured++;
                total += value;
                lowest = Math.min(lowest, value);
                highest = Math.max(highest, value);
            }
        }
        return new Summary(span, start, to - from, measured, lowest, highest, total);
    }
}
