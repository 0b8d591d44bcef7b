package railwitness.safety.power;

import java.util.Locale;
import railwitness.drivers.reading.Channel;

/**
 * What one rail should stand at once the unit runs without load. Made by {@link #predicted} or {@link #nominal}.
 *
 * @param channel its voltage
 * @param volts with its sign, V, not 0
 * @param lowest magnitude from which it is where it should be, V
 * @param highest magnitude up to which it is, V
 * @param predicted true where the design predicts it, false where only the nominal is known
 */
public record RailTarget(Channel channel, double volts, double lowest, double highest, boolean predicted) {
    /** How far a sound unit may lie from its prediction: two wrong turns of a dozen (common practice, no source). */
    private static final double OFF_PREDICTION = 0.2;

    /** A nominal is often that under load; without load a soft unit stands above it (common practice, no source). */
    private static final double BELOW_NOMINAL = 0.2;

    private static final double ABOVE_NOMINAL = 0.3;

    /** Below this share a rail does not stand, whatever the person says. */
    private static final double LOW = 0.5;

    /** A voltage of the wrong sign beyond this share and this voltage is no offset and no leakage. */
    private static final double WRONG_SIGN = 0.1;

    private static final double WRONG_SIGN_VOLTS = 1;

    public RailTarget {
        if (!(Math.abs(volts) > 0 && Double.isFinite(volts))) {
            throw new IllegalArgumentException("rail " + channel.node() + " needs an expected voltage, not " + volts);
        }
    }

    /**
     * A rail that the design predicts.
     *
     * @param volts without load, with its sign
     * @param mayReach magnitude that it may reach without load beyond that, V: the peak of a winding behind a choke; 0
     *     for none
     */
    public static RailTarget predicted(Channel channel, double volts, double mayReach) {
        double high = Math.max(Math.abs(volts), mayReach);
        return new RailTarget(
                channel, volts, (1 - OFF_PREDICTION) * Math.abs(volts), (1 + OFF_PREDICTION) * high, true);
    }

    /** A rail of which only the nominal is known, V with its sign. */
    public static RailTarget nominal(Channel channel, double volts) {
        double magnitude = Math.abs(volts);
        return new RailTarget(channel, volts, (1 - BELOW_NOMINAL) * magnitude, (1 + ABOVE_NOMINAL) * magnitude, false);
    }

    /** Where it should be, with its tolerance. */
    boolean holds(double measured) {
        double towards = measured * Math.signum(volts);
        return towards >= lowest && towards <= highest;
    }

    /** High enough that a person may say that it is right; never where the design predicts otherwise. */
    boolean mayBeRight(double measured) {
        return holds(measured) || !predicted && measured * Math.signum(volts) >= LOW * magnitude();
    }

    /** Of the other sign, and not by an offset. */
    boolean reversed(double measured) {
        return measured * Math.signum(volts) < -Math.max(WRONG_SIGN * magnitude(), WRONG_SIGN_VOLTS);
    }

    /** Magnitude, V. */
    double magnitude() {
        return Math.abs(volts);
    }

    String name() {
        return channel.node();
    }

    /** Such as {@code 40.7 V predicted}. */
    String words() {
        return String.format(Locale.ROOT, "%.3g V %s", volts, predicted ? "predicted" : "nominal");
    }
}
