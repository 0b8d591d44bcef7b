package railwitness.logger.recording.record;

import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import railwitness.analysis.soak.StabilityRule;
import railwitness.analysis.steady.Drift;
import railwitness.analysis.steady.PowerStability;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.plan.HoldRules;

/**
 * What a hold that nobody watches is held to: how hot it may get, how fast a rail may drift, and by which rule it is steady
 * enough to end. It keeps a mean of every ten seconds, or of every whole cycle, for as long as its rules look back, however long the hold.
 */
final class HoldWatch {
    private static final double KEPT_EVERY_SECONDS = 10;
    private static final double LOOK_EVERY_SECONDS = 60;
    private static final double DRIFT_SECONDS = 1800;
    private static final double BACK_SECONDS = 3700;
    private static final double LEAST_CYCLES = 8;
    private static final double PROBABLE = 0.95;

    private final HoldRules rules;
    private final Set<String> rails;
    private final double beginSeconds;
    private final double everySeconds;
    private final double driftSeconds;
    private final double backSeconds;
    private final Map<Channel, RecentMeans> kept = new TreeMap<>();
    private final Set<String> drifting = new HashSet<>();
    private double lookedSeconds;
    private Optional<String> tooHot = Optional.empty();

    /**
     * @param rails names of the rails, for drift alarms
     * @param cycleSeconds length of its cycle, over the whole of which is averaged; 0 where the load is constant
     */
    HoldWatch(HoldRules rules, Set<String> rails, double cycleSeconds, long nowNanos) {
        this.everySeconds = Math.max(KEPT_EVERY_SECONDS, cycleSeconds);
        this.driftSeconds = Math.max(DRIFT_SECONDS, LEAST_CYCLES * cycleSeconds);
        this.backSeconds = Math.max(BACK_SECONDS, LEAST_CYCLES * cycleSeconds + 100);
        this.rules = rules;
        this.rails = Set.copyOf(rails);
        this.beginSeconds = nowNanos / 1e9;
        this.lookedSeconds = beginSeconds;
    }

    /** Told of what goes on. */
    interface Told {
        void alarm(EventKind kind, String words);
    }

    void heard(Measured reading) {
        Channel channel = reading.channel();
        if (channel.quantity() == Quantity.TEMPERATURE
                && rules.hottestDegC().isPresent()
                && reading.value() > rules.hottestDegC().getAsDouble()) {
            tooHot = Optional.of(String.format(
                    Locale.ROOT,
                    "%s is at %.1f degC, the hold allows %.1f degC",
                    channel.node(),
                    reading.value(),
                    rules.hottestDegC().getAsDouble()));
        }
        boolean wanted = channel.quantity() == Quantity.TEMPERATURE
                || channel.quantity() == Quantity.VOLTAGE
                || channel.quantity() == Quantity.CURRENT;
        if (wanted) {
            kept.computeIfAbsent(channel, any -> new RecentMeans(everySeconds, backSeconds))
                    .add(reading.repliedNanos() / 1e9, reading.value());
        }
    }

    /** Why the output must go off, if it must. */
    Optional<String> tooHot() {
        return tooHot;
    }

    /** Looks once a minute; what drifts is told once when it begins and once when it is over. */
    Optional<String> enough(long nowNanos, Told told) {
        double now = nowNanos / 1e9;
        if (now - lookedSeconds < LOOK_EVERY_SECONDS) {
            return Optional.empty();
        }
        lookedSeconds = now;
        drifts(told);
        boolean early = now - beginSeconds >= rules.atLeast().toNanos() / 1e9;
        return early ? rules.until().flatMap(this::met) : Optional.empty();
    }

    private void drifts(Told told) {
        if (rules.driftAlarmPercentPerHour().isEmpty()) {
            return;
        }
        double limit = rules.driftAlarmPercentPerHour().getAsDouble();
        for (String rail : rails) {
            RecentMeans means = kept.get(new Channel(rail, Quantity.VOLTAGE));
            if (means == null || means.spanSeconds() < driftSeconds * 0.8) {
                continue;
            }
            RecentMeans.Series last = means.last(driftSeconds);
            double mean = last.mean();
            if (mean == 0) {
                continue;
            }
            var slope = Drift.of(last.seconds(), last.values()).perHour().scale(100 / Math.abs(mean));
            double sure = Math.abs(slope.value()) - slope.coverage(PROBABLE).expanded();
            if (sure > limit && drifting.add(rail)) {
                told.alarm(
                        EventKind.DRIFT,
                        String.format(
                                Locale.ROOT,
                                "%s rail drifts by %.3g %%/h, told from %.3g on",
                                rail,
                                slope.value(),
                                limit));
            } else if (Math.abs(slope.value()) < limit && drifting.remove(rail)) {
                told.alarm(EventKind.DRIFT_OVER, rail + " rail drifts no longer");
            }
        }
    }

    private Optional<String> met(String rule) {
        return rule.equals(HoldRules.POWER_RULE) ? power() : temperature(rule);
    }

    private Optional<String> temperature(String name) {
        for (StabilityRule rule : StabilityRule.values()) {
            if (rule.standard().equals(name)) {
                boolean any = false;
                for (Map.Entry<Channel, RecentMeans> entry : kept.entrySet()) {
                    boolean place = entry.getKey().quantity() == Quantity.TEMPERATURE
                            && !Set.of("ambient", "room")
                                    .contains(entry.getKey().node());
                    if (place) {
                        RecentMeans.Series all = entry.getValue().last(backSeconds);
                        if (!rule.at(all.seconds(), all.values()).steady()) {
                            return Optional.empty();
                        }
                        any = true;
                    }
                }
                return any ? Optional.of("steady by " + rule.words()) : Optional.empty();
            }
        }
        return Optional.empty();
    }

    private Optional<String> power() {
        RecentMeans volts = input(Quantity.VOLTAGE);
        RecentMeans amps = input(Quantity.CURRENT);
        if (volts == null || amps == null) {
            return Optional.empty();
        }
        RecentMeans.Series u = volts.last(310);
        RecentMeans.Series i = amps.last(310);
        int n = Math.min(u.values().length, i.values().length);
        double[] seconds = new double[n];
        double[] watts = new double[n];
        for (int k = 0; k < n; k++) {
            int atU = u.values().length - n + k;
            seconds[k] = u.seconds()[atU];
            watts[k] = u.values()[atU] * i.values()[i.values().length - n + k];
        }
        if (n < 2) {
            return Optional.empty();
        }
        double warm = seconds[n - 1] - 300 - beginSeconds;
        return PowerStability.of(Math.max(1, rails.size()), warm, seconds, watts)
                        .kept()
                ? Optional.of("steady by " + PowerStability.NAME)
                : Optional.empty();
    }

    private RecentMeans input(Quantity quantity) {
        RecentMeans terminals = kept.get(new Channel("input", quantity));
        return terminals == null ? kept.get(new Channel("supply", quantity)) : terminals;
    }
}
