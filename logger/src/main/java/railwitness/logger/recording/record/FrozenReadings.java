package railwitness.logger.recording.record;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.plan.Step;

/**
 * A reading that stands still to its last digit over steps that must change it. Input current must follow load and
 * rails of an unregulated unit must follow the input, by the conservation of energy and by the turns; a rail that does
 * not move with its load is frozen where another rail does.
 */
final class FrozenReadings {
    private static final double LOAD_SHARE = 0.1;
    private static final double RAIL_LOAD_SHARE = 0.2;
    private static final double INPUT_SHARE = 0.03;
    private static final double SEEN_SHARE = 0.003;
    private static final double SEEN_AMPS = 0.1;

    private final Map<String, Double> fullLoad;
    private final Set<String> regulated;
    private final Map<Channel, Seen> now = new HashMap<>();
    private final Map<Channel, Still> still = new HashMap<>();
    private final Map<Channel, Double> lastValues = new HashMap<>();

    /** @param fullLoad by rail, A; 0 where none is known */
    FrozenReadings(Map<String, Double> fullLoad, boolean regulated) {
        this(fullLoad, regulated ? fullLoad.keySet() : Set.of());
    }

    /** @param regulated rails that are held, which may stand still whatever moves */
    FrozenReadings(Map<String, Double> fullLoad, Set<String> regulated) {
        this.fullLoad = Map.copyOf(fullLoad);
        this.regulated = Set.copyOf(regulated);
    }

    /** What one channel read during a step. */
    private record Seen(double low, double high, double last) {
        Seen and(double value) {
            return new Seen(Math.min(low, value), Math.max(high, value), value);
        }

        boolean still() {
            return low == high;
        }
    }

    /** The last value of a step, and the step since which it has not moved. */
    private record Still(double value, Step since) {}

    /** A step begins or begins again. */
    void begin() {
        now.clear();
    }

    void heard(Measured reading) {
        now.merge(
                reading.channel(),
                new Seen(reading.value(), reading.value(), reading.value()),
                (seen, one) -> seen.and(reading.value()));
    }

    /** The step has been averaged: a channel that should have moved and did not, in words. */
    Optional<String> over(Step step) {
        Optional<String> frozen = now.keySet().stream()
                .sorted()
                .filter(channel -> isFrozen(channel, step))
                .findFirst()
                .map(channel -> String.format(
                        Locale.ROOT,
                        "%s has stood at %.8g %s to the last digit since %s %s, although that step was another: its meter"
                                + " has stopped measuring",
                        channel,
                        still.get(channel).value(),
                        channel.quantity().unit(),
                        still.get(channel).since().stage(),
                        still.get(channel).since().name()));
        if (frozen.isEmpty()) {
            now.forEach((channel, seen) -> remember(channel, seen, step));
        }
        return frozen;
    }

    private void remember(Channel channel, Seen seen, Step step) {
        boolean rail = channel.quantity() == Quantity.VOLTAGE && fullLoad.containsKey(channel.node());
        if (rail || channel.quantity() == Quantity.CURRENT && !fullLoad.containsKey(channel.node())) {
            lastValues.put(channel, seen.high());
        }
        Still before = still.get(channel);
        if (before == null || !seen.still() || before.value() != seen.last()) {
            still.put(channel, new Still(seen.last(), step));
        }
    }

    private boolean isFrozen(Channel channel, Step step) {
        Still before = still.get(channel);
        Seen seen = now.get(channel);
        return before != null
                && seen.still()
                && seen.low() == before.value()
                && mustMove(channel, before.since(), step);
    }

    private boolean mustMove(Channel channel, Step from, Step to) {
        boolean input = Math.abs(to.inputVolts() / from.inputVolts() - 1) >= INPUT_SHARE;
        boolean terminals = channel.node().equals("input") || channel.node().equals("supply");
        if (channel.quantity() == Quantity.CURRENT) {
            return terminals
                    ? to.remoteOn() && (from.remoteOn() ? share(from, to) >= LOAD_SHARE : otherCurrentMoved(channel))
                    : ownShare(channel.node(), from, to) >= LOAD_SHARE;
        }
        if (channel.quantity() != Quantity.VOLTAGE) {
            return false;
        }
        if (terminals) {
            return input;
        }
        boolean on = from.remoteOn()
                && to.remoteOn()
                && !regulated.contains(channel.node())
                && fullLoad.containsKey(channel.node());
        return on && (input || ownShare(channel.node(), from, to) >= RAIL_LOAD_SHARE && anotherMoved(channel));
    }

    /** Change of the load of all rails together, as a share of full load. */
    private double share(Step from, Step to) {
        double full =
                fullLoad.values().stream().mapToDouble(Double::doubleValue).sum();
        double moved = fullLoad.keySet().stream()
                .mapToDouble(rail ->
                        to.loadAmps().getOrDefault(rail, 0.0) - from.loadAmps().getOrDefault(rail, 0.0))
                .sum();
        return full > 0 ? Math.abs(moved) / full : 0;
    }

    private double ownShare(String rail, Step from, Step to) {
        double full = fullLoad.getOrDefault(rail, 0.0);
        double moved = to.loadAmps().getOrDefault(rail, 0.0) - from.loadAmps().getOrDefault(rail, 0.0);
        return full > 0 ? Math.abs(moved) / full : 0;
    }

    /** The unit was turned on since, and the other reading of the input current shows it. */
    private boolean otherCurrentMoved(Channel channel) {
        return lastValues.entrySet().stream()
                .filter(other -> other.getKey().quantity() == Quantity.CURRENT
                        && !other.getKey().equals(channel)
                        && now.containsKey(other.getKey()))
                .anyMatch(other -> now.get(other.getKey()).high() - other.getValue() >= SEEN_AMPS);
    }

    /** Another rail moved by more than digits since then: this one shares its transformer. */
    private boolean anotherMoved(Channel channel) {
        return lastValues.entrySet().stream()
                .filter(other -> other.getKey().quantity() == Quantity.VOLTAGE
                        && !other.getKey().equals(channel)
                        && now.containsKey(other.getKey()))
                .anyMatch(other -> Math.abs(now.get(other.getKey()).high() / other.getValue() - 1) >= SEEN_SHARE);
    }
}
