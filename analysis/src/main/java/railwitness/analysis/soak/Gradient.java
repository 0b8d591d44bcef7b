package railwitness.analysis.soak;

import java.util.Arrays;
import railwitness.analysis.steady.Drift;

/** Slope of the last so many seconds by least squares, at most a limit. */
record Gradient(double mostKelvinPerHour, double needsSeconds) implements Criterion {
    @Override
    public double moved(Series record) {
        int from = record.firstAfter(needsSeconds);
        int to = record.end() + 1;
        double[] seconds = Arrays.copyOfRange(record.seconds(), from, to);
        double[] values = Arrays.copyOfRange(record.values(), from, to);
        return Math.abs(Drift.of(seconds, values).perHour().value());
    }

    @Override
    public boolean steady(double moved) {
        return moved <= mostKelvinPerHour;
    }

    @Override
    public String unit() {
        return "K/h";
    }
}
