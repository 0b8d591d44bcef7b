package railwitness.analysis.transformer;

/**
 * What a rail has to give.
 *
 * @param volts nominal, with its sign, V, not 0
 * @param amperes full load, A, 0 or more
 */
public record RailLoad(double volts, double amperes) {
    public RailLoad {
        if (!Double.isFinite(volts) || volts == 0 || !(amperes >= 0)) {
            throw new IllegalArgumentException(
                    "rail of " + volts + " V at " + amperes + " A: volts must not be 0, amperes be 0 or more");
        }
    }

    double watts() {
        return Math.abs(volts) * amperes;
    }
}
