package railwitness.logger.reporting.chart;

import java.util.OptionalInt;

/**
 * One line of a picture.
 *
 * @param name written beside it; empty for none
 * @param x in the unit of the axis, not falling
 * @param y as many
 * @param expanded half-lengths of the whiskers at each point, U at 95 %; zero draws none
 * @param predicted true: dashed; false: measured, solid
 * @param rail which rail it is of, counted from zero; empty for none
 */
public record Curve(String name, double[] x, double[] y, double[] expanded, boolean predicted, OptionalInt rail) {
    public Curve {
        if (x.length != y.length || x.length != expanded.length) {
            throw new IllegalArgumentException("curve '" + name + "' has " + x.length + " x, " + y.length + " y and "
                    + expanded.length + " whiskers: must be as many");
        }
    }

    static Curve measured(String name, double[] x, double[] y, double[] expanded, OptionalInt rail) {
        return new Curve(name, x, y, expanded, false, rail);
    }

    static Curve predicted(String name, double[] x, double[] y, OptionalInt rail) {
        return new Curve(name, x, y, new double[x.length], true, rail);
    }

    /** Whether it is the other within a thousandth, so that one of the two says it all. */
    boolean liesOn(Curve other) {
        for (int i = 0; i < x.length; i++) {
            if (Math.abs(y[i] - other.at(x[i])) > 1e-3 * Math.abs(y[i])) {
                return false;
            }
        }
        return true;
    }

    /** The value at a place between its points by a straight line; the nearest end's outside. */
    double at(double place) {
        int after = 0;
        while (after < x.length && x[after] < place) {
            after++;
        }
        if (after == 0 || after == x.length) {
            return y[Math.max(0, Math.min(after, y.length - 1))];
        }
        double part = (place - x[after - 1]) / (x[after] - x[after - 1]);
        return y[after - 1] + part * (y[after] - y[after - 1]);
    }
}
