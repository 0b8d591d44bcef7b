package railwitness.logger.ui.screen.trace;

/**
 * The axis of values: round numbers at its grid lines.
 *
 * @param low value at the bottom
 * @param high value at the top, above the low one
 * @param step from grid line to grid line
 */
record ValueAxis(double low, double high, double step) {
    private static final double[] ROUND = {1, 2, 5, 10};

    /** An axis that holds both values with some air, at most {@code lines} grid lines, and no less than {@code least}. */
    static ValueAxis holding(double low, double high, int lines, double least) {
        if (high - low < least) {
            double middle = (high + low) / 2;
            return holding(middle - least / 2, middle + least / 2 * (1 + 1e-6), lines, least);
        }
        double air = (high - low) * 0.08;
        double from = low >= 0 && low - air < 0 ? 0 : low - air;
        double to = high + air;
        double step = roundStep((to - from) / Math.max(1, lines));
        return new ValueAxis(from, to, step);
    }

    private static double roundStep(double least) {
        double decade = 1e-9;
        while (decade * 10 <= least) {
            decade *= 10;
        }
        for (double factor : ROUND) {
            if (decade * factor >= least) {
                return decade * factor;
            }
        }
        return decade * 10;
    }

    double firstLine() {
        return Math.ceil(low / step - 1e-9) * step;
    }

    /** Places after the point that the grid lines need. */
    int places() {
        int places = 0;
        for (double shown = step; shown < 0.999 && places < 6; shown *= 10) {
            places++;
        }
        return places;
    }

    /** 0 at the bottom, 1 at the top. */
    double share(double value) {
        return (value - low) / (high - low);
    }

    /** Whether what another axis was made for is well seen on this one, using at least this share of it. */
    boolean holds(ValueAxis other, double share) {
        double air = (high - low) * 0.02;
        return other.low >= low - air && other.high <= high + air && other.high - other.low >= (high - low) * share;
    }
}
