package railwitness.safety.power;

import java.util.Locale;
import java.util.Optional;
import railwitness.drivers.bench.Source;

/**
 * What the supply is armed with.
 *
 * @param startVolts voltage with which the output comes on, V, zero or more
 * @param highestVolts highest voltage of the plan, V, not above the over-voltage protection
 * @param limitAmps current limit, A, above zero, not above the over-current protection
 * @param overVoltageVolts over-voltage protection, V
 * @param overCurrentAmps over-current protection, A
 * @param resolutionVolts how far a voltage may read back from what was set, V
 * @param resolutionAmps how far a current may read back from what was set, A
 * @param acceptedWithout the words in which the bench sheet accepts a supply without a protection; empty when it does
 *     not
 */
public record Settings(
        Source source,
        double startVolts,
        double highestVolts,
        double limitAmps,
        double overVoltageVolts,
        double overCurrentAmps,
        double resolutionVolts,
        double resolutionAmps,
        Optional<String> acceptedWithout) {
    public Settings {
        ordered("start voltage", 0, startVolts, highestVolts, "V");
        ordered("highest voltage", 0, highestVolts, overVoltageVolts, "V");
        ordered("current limit", Double.MIN_VALUE, limitAmps, overCurrentAmps, "A");
        ordered("resolution of voltage", Double.MIN_VALUE, resolutionVolts, 1, "V");
        ordered("resolution of current", Double.MIN_VALUE, resolutionAmps, 1, "A");
    }

    private static void ordered(String what, double low, double value, double high, String unit) {
        if (!(value >= low && value <= high && high < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "%s %.4g %s must be %s and at most %.4g %s",
                    what,
                    value,
                    unit,
                    low == 0 ? "zero or more" : "above zero",
                    high,
                    unit));
        }
    }
}
