package railwitness.logger.recording.record;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.LatestReadings;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Reading;

/**
 * Whether what was set stays set: an output that nobody switched off, a voltage or a load far from its setting, a rail
 * that is gone or of the wrong sign, an input current of the wrong sign, meters that read one thing and no longer agree,
 * a ripple or a temperature that cannot be. A doubt keeps a step from being averaged; one that stays ends the run. No
 * clock, no port: it lives on what is told.
 */
final class SettingsHeld {
    /** So long a doubt may stay: an output with a capacitor follows a lower setting slowly. */
    private static final long PATIENCE_NANOS = 2_000_000_000L;

    private static final long FALLING_NANOS = 10_000_000_000L;
    private static final int BELIEVED = 3;

    /** How far the supply's own read-back may be from its setting; common practice, no source. */
    private static final double VOLTS_SHARE = 0.05;

    private static final double VOLTS = 0.2;
    private static final double AMPS_SHARE = 0.1;
    private static final double AMPS = 0.05;

    /** A supply this close to its limit may be limiting. */
    private static final double NEAR_LIMIT = 0.95;

    private final SettingsHeldSheet sheet;
    private final Map<Channel, Doubt> doubts = new HashMap<>();
    private final LatestReadings latest;
    private final ReadingsAgree agree;
    private Ordered ordered = Ordered.nothing();

    /** A doubt about one channel. */
    private record Doubt(String instrument, String words, long sinceNanos, int times, long patienceNanos) {}

    /**
     * What was ordered and read back.
     *
     * @param volts of the supply; NaN for nothing ordered yet
     * @param loadAmps of each rail with a programmable load
     * @param railsMustStand whether the rails must be up: the unit is on and may not drop out
     * @param fromNanos readings asked for from then on are of these settings
     */
    record Ordered(double volts, Map<String, Double> loadAmps, boolean railsMustStand, long fromNanos) {
        Ordered {
            loadAmps = Map.copyOf(loadAmps);
        }

        static Ordered nothing() {
            return new Ordered(Double.NaN, Map.of(), false, Long.MAX_VALUE);
        }
    }

    /** @param latest has heard every reading before it comes here */
    SettingsHeld(SettingsHeldSheet sheet, LatestReadings latest) {
        this.sheet = sheet;
        this.latest = latest;
        this.agree = new ReadingsAgree();
    }

    /** Settings change or have changed; what was doubted of the old ones is over. */
    void ordered(Ordered now) {
        ordered = now;
        doubts.clear();
    }

    /** All that one instrument said in a round. */
    void heard(PollResult pollResult, boolean limiting) {
        for (Reading reading : pollResult.readings()) {
            if (reading instanceof Measured measured && measured.requestedNanos() >= ordered.fromNanos()) {
                judge(pollResult.instrument(), measured, limiting || nearLimit());
            }
        }
    }

    /** An output that went off by itself. */
    Optional<String> switchedOff(PollResult pollResult) {
        boolean off = pollResult.conditions().contains(Condition.OUTPUT_OFF)
                && ordered.fromNanos() != Long.MAX_VALUE
                && (pollResult.instrument().equals(sheet.supply()) || ordersLoad(pollResult));
        return off
                ? Optional.of(pollResult.instrument()
                        + " says that it is off, and nobody ordered that: it has switched off or reset itself")
                : Optional.empty();
    }

    private boolean ordersLoad(PollResult pollResult) {
        return pollResult.readings().stream()
                .anyMatch(reading -> reading.channel().quantity() == Quantity.CURRENT
                        && reading.requestedNanos() >= ordered.fromNanos()
                        && ordered.loadAmps().getOrDefault(reading.channel().node(), 0.0) > 0);
    }

    private boolean nearLimit() {
        return latest.number(sheet.supplyAmps())
                .filter(amps -> amps.value() >= NEAR_LIMIT * sheet.limitAmps())
                .isPresent();
    }

    private void judge(String instrument, Measured reading, boolean limiting) {
        Channel channel = reading.channel();
        Optional<String> words = Optional.empty();
        long patience = PATIENCE_NANOS;
        if (channel.equals(sheet.supplyVolts())) {
            words = limiting ? Optional.empty() : supply(reading.value());
            patience = reading.value() > ordered.volts() ? FALLING_NANOS : patience;
        } else if (channel.node().equals("input")) {
            words = input(reading, limiting);
        } else if (channel.quantity() == Quantity.CURRENT && ordered.railsMustStand()) {
            words = load(channel.node(), reading.value());
        } else if (sheet.railNominal(channel.node()).isPresent() && ordered.railsMustStand() && !limiting) {
            words = rail(channel, reading.value());
        } else if (channel.quantity() == Quantity.TEMPERATURE) {
            words = agree.temperature(reading);
        }
        doubt(instrument, reading, words, patience);
    }

    private Optional<String> supply(double volts) {
        return Math.abs(volts - ordered.volts()) <= VOLTS_SHARE * ordered.volts() + VOLTS
                ? Optional.empty()
                : Optional.of(words("the supply was set to %.4g V and gives %.4g V", ordered.volts(), volts));
    }

    private Optional<String> load(String rail, double amps) {
        Double set = ordered.loadAmps().get(rail);
        return set == null || Math.abs(Math.abs(amps) - set) <= AMPS_SHARE * set + AMPS
                ? Optional.empty()
                : Optional.of(words("the load of the " + rail + " rail was set to %.4g A and draws %.4g A", set, amps));
    }

    private Optional<String> input(Measured reading, boolean limiting) {
        if (reading.channel().quantity() == Quantity.CURRENT) {
            return reading.value() < -sheet.negativeAmps()
                    ? Optional.of(words("the input current reads %.3g A: ", reading.value()) + sheet.currentLeads()
                            + " are reversed")
                    : now(sheet.supplyAmps()).flatMap(supply -> agree.current(reading, supply));
        }
        if (reading.channel().quantity() != Quantity.VOLTAGE) {
            return Optional.empty();
        }
        return reading.value() < -ordered.volts() / 10
                ? Optional.of(words("the input meter reads %.3g V: its leads are reversed", reading.value()))
                : now(sheet.supplyVolts())
                        .filter(supply -> !limiting)
                        .flatMap(supply -> agree.voltage(reading, supply));
    }

    /** The last reading of the same settings. */
    private Optional<Measured> now(Channel channel) {
        return latest.number(channel, ordered.fromNanos());
    }

    private Optional<String> rail(Channel channel, double value) {
        double nominal = sheet.railNominal(channel.node()).getAsDouble();
        if (channel.quantity() == Quantity.RIPPLE) {
            return agree.ripple(channel, value, nominal);
        }
        if (channel.quantity() != Quantity.VOLTAGE) {
            return Optional.empty();
        }
        boolean down = Math.abs(value) < sheet.railLowVolts().getOrDefault(channel.node(), 0.0);
        boolean wrong = value * nominal < 0;
        return down || wrong
                ? Optional.of(words("the " + channel.node() + " rail reads %.3g V under power", value)
                        + (down ? ", it stood before" : ": its sign is wrong"))
                : Optional.empty();
    }

    private void doubt(String instrument, Measured reading, Optional<String> words, long patience) {
        if (words.isEmpty()) {
            doubts.remove(reading.channel());
            return;
        }
        Doubt before = doubts.get(reading.channel());
        long since = before == null ? reading.requestedNanos() : before.sinceNanos();
        int times = before == null ? 1 : before.times() + 1;
        doubts.put(reading.channel(), new Doubt(instrument, words.get(), since, times, patience));
    }

    /** Whether anything is doubted now. */
    boolean doubted() {
        return !doubts.isEmpty();
    }

    /** The doubt that has stayed too long, in words; empty while there is none. */
    Optional<String> lost(long nowNanos) {
        return doubts.values().stream()
                .filter(doubt -> doubt.times() >= BELIEVED && nowNanos - doubt.sinceNanos() >= doubt.patienceNanos())
                .findFirst()
                .map(doubt -> doubt.words() + ": " + doubt.instrument()
                        + " has reset itself, was changed by hand, or lost a lead");
    }

    private static String words(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }

    /**
     * What does not change in a run.
     *
     * @param supply name of the supply
     * @param limitAmps its current limit once the rails are up, A
     * @param currentLeads whose leads are reversed when the input current is negative
     * @param negativeAmps magnitude up to which a negative input current is the meter's own error, A
     * @param railLowVolts by name, magnitude below which that rail is down, V
     * @param railNominals by name, V with sign
     */
    record SettingsHeldSheet(
            String supply,
            double limitAmps,
            String currentLeads,
            double negativeAmps,
            Map<String, Double> railLowVolts,
            Map<String, Double> railNominals) {
        Channel supplyVolts() {
            return new Channel("supply", Quantity.VOLTAGE);
        }

        Channel supplyAmps() {
            return new Channel("supply", Quantity.CURRENT);
        }

        OptionalDouble railNominal(String node) {
            return railNominals.containsKey(node) ? OptionalDouble.of(railNominals.get(node)) : OptionalDouble.empty();
        }
    }
}
