package railwitness.logger.reporting.chart;

import java.math.BigDecimal;

/**
 * From where to where an axis goes, at round numbers.
 *
 * @param from its lower end
 * @param to its upper end, above the lower
 * @param step from one number at it to the next
 */
record AxisRange(double from, double to, double step) {
    private static final double[] ROUND = {1, 2, 2.5, 5, 10};

    /** Holds both ends, with about so many steps between them. */
    static AxisRange holding(double least, double most, int steps) {
        double span = Math.max(most - least, Math.max(Math.abs(most), 1e-6) * 1e-6);
        double step = roundUp(span / steps);
        double from = Math.floor(least / step + 1e-9) * step;
        double to = Math.ceil(most / step - 1e-9) * step;
        return new AxisRange(from, to > from ? to : from + step, step);
    }

    private static double roundUp(double step) {
        double decade = Math.pow(10, Math.floor(Math.log10(step)));
        for (double round : ROUND) {
            if (round * decade >= step * (1 - 1e-9)) {
                return round * decade;
            }
        }
        return 10 * decade;
    }

    /** Decimals that the numbers at the axis need. */
    int places() {
        BigDecimal plain = BigDecimal.valueOf((float) step).stripTrailingZeros();
        String text = String.format(java.util.Locale.ROOT, "%.9f", plain).replaceAll("0+$", "");
        return Math.max(0, text.length() - text.indexOf('.') - 1);
    }
}
