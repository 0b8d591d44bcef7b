package railwitness.safety.power;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;

/**
 * Whether a supply gives what it was set to: judged from the state it says it is in and from its own read-back, which is
 * all there is where it does not say. A voltage far below its setting is limiting where the current stands near its
 * limit, else the output is not what was ordered.
 */
final class SupplyHolds {
    private static final double SHORT_SHARE = 0.93;
    private static final double SHORT_VOLTS = 0.3;
    private static final double NEAR_LIMIT = 0.9;
    /** A hiccup comes and goes: what was seen is remembered so long (common practice, no source). */
    private static final long REMEMBERED_NANOS = 1_500_000_000L;

    private static final int BELIEVED = 3;

    private final Channel voltsChannel;
    private final Channel ampsChannel;
    private double volts;
    private double limitAmps;
    private long setNanos = Long.MAX_VALUE;
    private double lastAmps;
    private long limitedNanos = Long.MIN_VALUE;
    private long nowNanos;
    private double shortVolts;
    private int missed;

    SupplyHolds(Channel voltsChannel, Channel ampsChannel) {
        this.voltsChannel = voltsChannel;
        this.ampsChannel = ampsChannel;
    }

    /** What stands from that time on. */
    void isSet(double wantedVolts, double wantedLimit, long fromNanos) {
        volts = wantedVolts;
        limitAmps = wantedLimit;
        setNanos = fromNanos;
        missed = 0;
    }

    /** A setting is under way. */
    void moves() {
        setNanos = Long.MAX_VALUE;
    }

    void heard(Measured reading) {
        nowNanos = Math.max(nowNanos, reading.repliedNanos());
        if (reading.channel().equals(ampsChannel)) {
            lastAmps = reading.value();
            if (lastAmps >= NEAR_LIMIT * limitAmps && missed > 0) {
                missed = 0;
                limitedNanos = nowNanos;
            }
        } else if (reading.channel().equals(voltsChannel) && reading.requestedNanos() >= setNanos) {
            boolean isShort = reading.value() < SHORT_SHARE * volts - SHORT_VOLTS;
            missed = isShort ? missed + 1 : 0;
            shortVolts = reading.value();
            if (isShort) {
                limitedNanos = nowNanos;
            }
        }
    }

    void state(Set<Condition> conditions, long atNanos) {
        nowNanos = Math.max(nowNanos, atNanos);
        if (conditions.contains(Condition.LIMITING)) {
            missed = 0;
            limitedNanos = nowNanos;
        }
    }

    /** It limits now or did a moment ago. */
    boolean limits() {
        return limitedNanos != Long.MIN_VALUE && nowNanos - limitedNanos <= REMEMBERED_NANOS;
    }

    /** The output is far below what was set, again and again, and the supply does not limit. */
    Optional<String> lost() {
        return missed >= BELIEVED && lastAmps < NEAR_LIMIT * limitAmps
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "the supply was set to %.3g V and gives %.3g V at %.3g A, without limiting: it has reset itself, or"
                                + " was set by hand",
                        volts,
                        shortVolts,
                        lastAmps))
                : Optional.empty();
    }
}
