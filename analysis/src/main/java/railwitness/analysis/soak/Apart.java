package railwitness.analysis.soak;

/** Largest difference between a few readings a fixed time apart, the last one at the end; below a limit (two: at most). */
record Apart(double limitKelvin, double stepSeconds, int readings) implements Criterion {
    @Override
    public double needsSeconds() {
        return stepSeconds * (readings - 1);
    }

    @Override
    public double moved(Series record) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < readings; k++) {
            double value = record.valueBefore(k * stepSeconds);
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        return high - low;
    }

    @Override
    public boolean steady(double moved) {
        return readings > 2 ? moved < limitKelvin : moved <= limitKelvin;
    }

    @Override
    public String unit() {
        return "K";
    }
}
