package railwitness.analysis.soak;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What one thermometer said over a hold, brought to some hundreds of means of neighbouring readings.
 *
 * @param seconds middle of each mean, rising
 * @param width length of time that each mean covers, s, 0 or more
 * @param celsius means, degC
 * @param ambient means of the room at the same times, degC; empty where it was not measured or is taken as constant
 * @param segment which stretch of unbroken running each belongs to, counted from 0 and not falling
 */
record ThermalRecord(double[] seconds, double width, double[] celsius, Optional<double[]> ambient, int[] segment) {
    private static final int MOST_MEANS = 160;
    private static final int MOST_SEGMENTS = 4;

    /**
     * Gathers a record.
     *
     * @param breaks times at which running began again after an interruption, s
     */
    static ThermalRecord of(double[] seconds, double[] celsius, Optional<double[]> ambient, double... breaks) {
        if (seconds.length != celsius.length
                || ambient.filter(air -> air.length != celsius.length).isPresent()) {
            throw new IllegalArgumentException(
                    seconds.length + " times for " + celsius.length + " temperatures: must be as many");
        }
        int[] part = segments(seconds, breaks);
        List<int[]> groups = groups(seconds, part);
        double[] t = new double[groups.size()];
        double[] y = new double[groups.size()];
        double[] air = new double[groups.size()];
        int[] segment = new int[groups.size()];
        double width = 0;
        for (int g = 0; g < groups.size(); g++) {
            int from = groups.get(g)[0];
            int to = groups.get(g)[1];
            t[g] = mean(seconds, from, to);
            y[g] = mean(celsius, from, to);
            int at = g;
            ambient.ifPresent(values -> air[at] = mean(values, from, to));
            segment[g] = part[from];
            width += (seconds[to - 1] - seconds[from]) * (to - from) / Math.max(1, to - from - 1.0) / groups.size();
        }
        return new ThermalRecord(t, width, y, ambient.map(values -> air), segment);
    }

    private static int[] segments(double[] seconds, double[] breaks) {
        double[] sorted = breaks.clone();
        Arrays.sort(sorted);
        int spare = Math.max(0, sorted.length + 1 - MOST_SEGMENTS);
        int[] part = new int[seconds.length];
        for (int i = 0; i < part.length; i++) {
            int count = 0;
            for (double at : sorted) {
                count += seconds[i] >= at ? 1 : 0;
            }
            part[i] = count - spare;
        }
        return part;
    }

    /** Neighbours of one stretch, never across a break; the oldest of too many stretches are left out. */
    private static List<int[]> groups(double[] seconds, int[] part) {
        double from = seconds[0];
        double step = (seconds[seconds.length - 1] - from) / MOST_MEANS;
        List<int[]> groups = new ArrayList<>();
        int begin = 0;
        for (int i = 1; i <= seconds.length; i++) {
            boolean ends = i == seconds.length
                    || part[i] != part[begin]
                    || step > 0 && Math.floor((seconds[i] - from) / step) != Math.floor((seconds[begin] - from) / step);
            if (ends) {
                if (part[begin] >= 0) {
                    groups.add(new int[] {begin, i});
                }
                begin = i;
            }
        }
        return groups;
    }

    private static double mean(double[] values, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i] - values[from];
        }
        return values[from] + sum / (to - from);
    }

    int size() {
        return seconds.length;
    }

    int segments() {
        return size() == 0 ? 0 : segment[size() - 1] + 1;
    }

    double spanSeconds() {
        return size() == 0 ? 0 : seconds[size() - 1] - seconds[0];
    }

    /** Highest less lowest, K. */
    double range() {
        return Arrays.stream(celsius).max().orElse(0)
                - Arrays.stream(celsius).min().orElse(0);
    }

    /** Begin of each stretch, s. */
    double[] begins() {
        double[] begins = new double[segments()];
        Arrays.fill(begins, Double.NaN);
        for (int i = 0; i < size(); i++) {
            if (Double.isNaN(begins[segment[i]])) {
                begins[segment[i]] = seconds[i] - width / 2;
            }
        }
        return begins;
    }

    /** What the room leaves on a body of that time constant, the body at the room's first temperature at begin. */
    double[] followed(double tau) {
        double[] out = new double[size()];
        if (ambient.isEmpty()) {
            return out;
        }
        double[] air = ambient.get();
        out[0] = air[0];
        for (int i = 1; i < out.length; i++) {
            double step = (seconds[i] - seconds[i - 1]) / tau;
            double left = Math.exp(-step);
            double ramp = step < 1e-6 ? 0.5 * step : 1 - (1 - left) / step;
            out[i] = out[i - 1] * left + air[i - 1] * (1 - left) + (air[i] - air[i - 1]) * ramp;
        }
        return out;
    }

    /** The room at the end: mean of the last tenth; 0 where it was not measured. */
    double ambientAtEnd() {
        if (ambient.isEmpty()) {
            return 0;
        }
        int from = size() - Math.max(1, size() / 10);
        return mean(ambient.get(), from, size());
    }
}
