package railwitness.safety.power;

import java.time.Duration;
import java.util.List;
import java.util.Locale;

/**
 * What first power may do to a unit, in plain numbers of its design.
 *
 * @param stepVolts input voltages taken with the remote turn-on off, V, rising, none above the working voltage; empty
 *     for a unit without a remote turn-on line, which is then powered at its working voltage at once
 * @param remoteOffLimitAmps current limit while the remote turn-on is off, A
 * @param remoteOffAmps highest current with the remote turn-on off once the input capacitors are full, A; below the
 *     limit
 * @param standbyKnown whether the design gives that current
 * @param inputFarads capacitors at the input, F, zero or more
 * @param workingVolts voltage at which the unit is turned on, V
 * @param startVolts voltage at which the unit starts, V; nothing dwells below it
 * @param inrushLimitAmps current limit while the filter capacitors fill, A
 * @param storedJoules energy of the filter capacitors at the working voltage, J, zero or more
 * @param softStart time the unit itself takes to come up
 * @param noLoadAmps highest current after the inrush window without load, A; below the inrush limit
 * @param noLoadKnown whether the design gives that current; where it does not the person is asked once
 */
public record FirstPowerBounds(
        List<Double> stepVolts,
        double remoteOffLimitAmps,
        double remoteOffAmps,
        boolean standbyKnown,
        double inputFarads,
        double workingVolts,
        double startVolts,
        double inrushLimitAmps,
        double storedJoules,
        Duration softStart,
        double noLoadAmps,
        boolean noLoadKnown) {
    /** How much longer than worked out the filling of capacitors may take; common practice, no source. */
    public static final double MARGIN = 3;

    private static final Duration LEAST_WINDOW = Duration.ofMillis(100);

    public FirstPowerBounds {
        stepVolts = List.copyOf(stepVolts);
        between("remote-off current", 0, remoteOffAmps, remoteOffLimitAmps, "A");
        between("no-load current", 0, noLoadAmps, inrushLimitAmps, "A");
        between("start voltage", 0, startVolts, workingVolts, "V");
        between("input capacitors", 0, inputFarads, 1, "F");
        between("stored energy", 0, storedJoules, 100_000, "J");
        double before = 0;
        for (double volts : stepVolts) {
            between("input step", before, volts, workingVolts, "V");
            before = volts;
        }
    }

    private static void between(String what, double low, double value, double high, String unit) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT, "%s %.4g %s must be %.4g to %.4g %s", what, value, unit, low, high, unit));
        }
    }

    /** Time for the input capacitors to fill by a step of so many volts at the current limit, {@code t = C dV / I}. */
    public Duration inputWindow(double risenVolts) {
        return window(inputFarads * risenVolts / remoteOffLimitAmps, Duration.ZERO);
    }

    /**
     * Time after which the filter capacitors are full: {@code t = W / (V I)}, energy over the power that the limit
     * lets in (two capacitors of 4700 uF at 42 V take 8.3 J; 13.8 V at 2 A fills them in 0.30 s), with its margin.
     */
    public Duration inrushWindow() {
        return window(storedJoules / (workingVolts * inrushLimitAmps), softStart);
    }

    private static Duration window(double seconds, Duration more) {
        return Duration.ofNanos((long) (MARGIN * seconds * 1e9))
                .plus(LEAST_WINDOW)
                .plus(more);
    }
}
