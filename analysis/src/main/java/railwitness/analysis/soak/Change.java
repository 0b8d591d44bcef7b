package railwitness.analysis.soak;

/** Highest less lowest value of the last so many seconds, at most a limit. */
record Change(double mostKelvin, double needsSeconds) implements Criterion {
    @Override
    public double moved(Series record) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = record.firstAfter(needsSeconds); i <= record.end(); i++) {
            low = Math.min(low, record.values()[i]);
            high = Math.max(high, record.values()[i]);
        }
        return high - low;
    }

    @Override
    public boolean steady(double moved) {
        return moved <= mostKelvin;
    }

    @Override
    public String unit() {
        return "K";
    }
}
