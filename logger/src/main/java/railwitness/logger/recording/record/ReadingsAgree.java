package railwitness.logger.recording.record;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;

/**
 * Whether a meter still reads what it read before: one that fell back to another function or range parts from the
 * supply's own read-back with which it agreed, or shows what cannot be. A meter that never agreed says nothing here, as its
 * shunt may be written down wrong and the findings say so; but a voltmeter that reads next to nothing is not where it
 * should be.
 */
final class ReadingsAgree {
    private static final double CURRENT_SHARE = 0.3;
    private static final double CURRENT_AMPS = 0.3;
    private static final double LOWEST_SHARE = 0.6;
    private static final double HIGHEST_SHARE = 1.15;
    /** No lead takes more than the rest of the supply's voltage: below it the meter is not at the input at all. */
    private static final double NOT_THERE_SHARE = 0.3;

    private static final double RIPPLE_SHARE = 0.3;
    /** No heat sink does that between two readings; common practice, no source. */
    private static final double JUMP_KELVIN = 15;

    private static final int KNOWN = 3;
    private static final double LEAST_AMPS = 0.5;

    private boolean currentAgreed;
    private boolean voltageAgreed;
    private final Map<Channel, Integer> temperatures = new TreeMap<>();
    private final Map<Channel, Double> lastDegC = new TreeMap<>();

    /** Input current against the supply's own, both of the same settings. */
    Optional<String> current(Measured meter, Measured supply) {
        double apart = Math.abs(meter.value() - supply.value());
        boolean agrees = apart <= CURRENT_SHARE * Math.max(meter.value(), supply.value()) + CURRENT_AMPS;
        currentAgreed |= agrees && supply.value() >= LEAST_AMPS;
        return agrees || !currentAgreed
                ? Optional.empty()
                : Optional.of(words("the input current reads %.3g A while the supply gives %.3g A", meter, supply));
    }

    /** Voltage at the unit's terminals against the supply's own, both of the same settings. */
    Optional<String> voltage(Measured meter, Measured supply) {
        double share = meter.value() / supply.value();
        boolean agrees = share >= LOWEST_SHARE && share <= HIGHEST_SHARE;
        voltageAgreed |= agrees;
        return agrees || !voltageAgreed && share >= NOT_THERE_SHARE
                ? Optional.empty()
                : Optional.of(words("the input voltage reads %.3g V while the supply gives %.3g V", meter, supply));
    }

    /** A ripple that is the rail itself. */
    Optional<String> ripple(Channel channel, double volts, double nominal) {
        return Math.abs(volts) <= RIPPLE_SHARE * Math.abs(nominal)
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "the ripple of the %s rail reads %.3g V, which is no ripple but a voltage",
                        channel.node(),
                        volts));
    }

    /** A temperature that jumped, against the last of the same place that was believed. */
    Optional<String> temperature(Measured reading) {
        int known = temperatures.getOrDefault(reading.channel(), 0);
        double last = lastDegC.getOrDefault(reading.channel(), reading.value());
        if (known < KNOWN || Math.abs(reading.value() - last) <= JUMP_KELVIN) {
            temperatures.put(reading.channel(), known + 1);
            lastDegC.put(reading.channel(), reading.value());
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "the temperature of %s went from %.3g to %.3g degC between two readings",
                reading.channel().node(),
                last,
                reading.value()));
    }

    private static String words(String form, Measured one, Measured other) {
        return String.format(Locale.ROOT, form, one.value(), other.value());
    }
}
