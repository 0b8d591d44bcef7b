package railwitness.logger.recording.record;

import java.util.Arrays;

/** Means of a channel over equal stretches, the last so many seconds of them: bounded, however long the hold. */
final class RecentMeans {
    private final double stretch;
    private final double[] seconds;
    private final double[] values;
    private int size;
    private int next;
    private double begun = Double.NaN;
    private double sum;
    private int count;

    /**
     * Means without a hole.
     *
     * @param seconds end of each stretch, rising
     */
    record Series(double[] seconds, double[] values) {
        double mean() {
            return Arrays.stream(values).average().orElse(0);
        }
    }

    /**
     * @param stretch length that one mean covers, s
     * @param back how far it remembers, s
     */
    RecentMeans(double stretch, double back) {
        this.stretch = stretch;
        int room = (int) Math.ceil(back / stretch) + 1;
        seconds = new double[room];
        values = new double[room];
    }

    void add(double at, double value) {
        if (Double.isNaN(begun)) {
            begun = at;
        }
        if (at - begun >= stretch && count > 0) {
            seconds[next] = at;
            values[next] = sum / count;
            next = (next + 1) % seconds.length;
            size = Math.min(size + 1, seconds.length);
            begun = at;
            sum = 0;
            count = 0;
        }
        sum += value;
        count++;
    }

    double spanSeconds() {
        return size < 2 ? 0 : at(seconds, size - 1) - at(seconds, 0);
    }

    private double at(double[] ring, int index) {
        return ring[(next - size + index + ring.length) % ring.length];
    }

    /** The last so many seconds; at least one mean where any is there, else one of zero. */
    Series last(double back) {
        if (size == 0) {
            return new Series(new double[1], new double[1]);
        }
        double end = at(seconds, size - 1);
        int from = size - 1;
        while (from > 0 && at(seconds, from - 1) >= end - back) {
            from--;
        }
        double[] times = new double[size - from];
        double[] means = new double[size - from];
        for (int i = from; i < size; i++) {
            times[i - from] = at(seconds, i);
            means[i - from] = at(values, i);
        }
        return new Series(times, means);
    }
}
