package railwitness.safety.power;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;

/** The rails while the unit comes up: where each stands, and whether it has stood still over the window. */
final class RailsRising {
    /** A rail that hiccups moves within this time; common practice, no source. */
    private static final long WINDOW_NANOS = 1_000_000_000L;

    private static final int LEAST_READINGS = 3;
    private static final double STILL_SHARE = 0.02;

    private final List<RailTarget> targets;
    private final Map<Channel, Deque<Measured>> lately = new HashMap<>();

    private final boolean bySight;

    /** @param bySight a person reads them, once each, and sees whether they stand still */
    RailsRising(List<RailTarget> targets, boolean bySight) {
        this.targets = List.copyOf(targets);
        this.bySight = bySight;
    }

    boolean watches(Channel channel) {
        return targets.stream().anyMatch(target -> target.channel().equals(channel));
    }

    boolean none() {
        return targets.isEmpty();
    }

    void heard(Measured reading) {
        Deque<Measured> all = lately.computeIfAbsent(reading.channel(), channel -> new ArrayDeque<>());
        all.addLast(reading);
        while (all.size() > LEAST_READINGS && second(all).requestedNanos() <= reading.requestedNanos() - WINDOW_NANOS) {
            all.removeFirst();
        }
    }

    private static Measured second(Deque<Measured> all) {
        var each = all.iterator();
        each.next();
        return each.next();
    }

    /** Where it was last read, V. */
    OptionalDouble volts(RailTarget target) {
        Deque<Measured> all = lately.get(target.channel());
        return all == null || all.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(all.getLast().value());
    }

    /** Every rail was read as often as standing still needs, after that time. */
    boolean readEnough(long sinceNanos) {
        return targets.stream().allMatch(target -> spans(target, sinceNanos));
    }

    /** Every rail has stood still over the whole window, by readings all asked for after that time. */
    boolean steady(long sinceNanos) {
        return targets.stream().allMatch(target -> steady(target, sinceNanos));
    }

    private boolean spans(RailTarget target, long sinceNanos) {
        Deque<Measured> all = lately.getOrDefault(target.channel(), new ArrayDeque<>());
        if (bySight) {
            return !all.isEmpty() && all.getLast().requestedNanos() >= sinceNanos;
        }
        return all.size() >= LEAST_READINGS
                && all.getFirst().requestedNanos() >= sinceNanos
                && all.getLast().requestedNanos() - all.getFirst().requestedNanos() >= WINDOW_NANOS;
    }

    private boolean steady(RailTarget target, long sinceNanos) {
        if (!spans(target, sinceNanos)) {
            return false;
        }
        if (bySight) {
            return true;
        }
        Deque<Measured> all = lately.get(target.channel());
        double high = all.stream().mapToDouble(Measured::value).max().orElseThrow();
        double low = all.stream().mapToDouble(Measured::value).min().orElseThrow();
        return high - low <= STILL_SHARE * target.magnitude();
    }

    /** Every rail is where it should be. */
    boolean stand() {
        return all(RailTarget::holds);
    }

    /** Every rail is where a person may say that it is right. */
    boolean mayBeRight() {
        return all(RailTarget::mayBeRight);
    }

    private boolean all(Judge judge) {
        return targets.stream()
                .allMatch(target -> volts(target).isPresent()
                        && judge.holds(target, volts(target).getAsDouble()));
    }

    private interface Judge {
        boolean holds(RailTarget target, double volts);
    }

    /** Those that are not where they should be, or that do not stand still: {@code plus 27 V of 40.7 V predicted}. */
    List<FirstPowerEnd.RailSeen> low(long sinceNanos) {
        return seen(target ->
                volts(target).isEmpty() || !target.holds(volts(target).getAsDouble()) || !steady(target, sinceNanos));
    }

    List<FirstPowerEnd.RailSeen> seen() {
        return seen(target -> true);
    }

    /** All of them, as they stand. */
    String words() {
        return targets.stream().map(this::reads).collect(Collectors.joining(", "));
    }

    private List<FirstPowerEnd.RailSeen> seen(Predicate<RailTarget> which) {
        return targets.stream().filter(which).map(this::seen).toList();
    }

    private FirstPowerEnd.RailSeen seen(RailTarget target) {
        return new FirstPowerEnd.RailSeen(target.name(), volts(target), target.words());
    }

    private String reads(RailTarget target) {
        return seen(target).words();
    }

    /**
     * A rail of the wrong sign: in words what the others say of it; empty while none is, or while another has not been
     * read since the wrong one was.
     */
    Optional<String> reversed(boolean patienceIsOver) {
        List<RailTarget> wrong = targets.stream().filter(this::isReversed).toList();
        if (wrong.isEmpty()) {
            return Optional.empty();
        }
        long asked = wrong.stream()
                .mapToLong(target -> lately.get(target.channel()).getLast().requestedNanos())
                .min()
                .orElseThrow();
        boolean others = targets.stream()
                .filter(target -> !wrong.contains(target))
                .allMatch(target -> lately.containsKey(target.channel())
                        && lately.get(target.channel()).getLast().requestedNanos() > asked);
        return others || patienceIsOver
                ? Optional.of(ReversedRails.words(wrong, targets, this::reads))
                : Optional.empty();
    }

    private boolean isReversed(RailTarget target) {
        return volts(target).isPresent() && target.reversed(volts(target).getAsDouble());
    }

    /** Rails with the same sign whose voltages fit only when exchanged; empty where none are. */
    Optional<String> exchanged() {
        for (RailTarget one : targets) {
            for (RailTarget other : targets) {
                if (one != other
                        && !holds(one, one)
                        && !holds(other, other)
                        && holds(one, other)
                        && holds(other, one)) {
                    return Optional.of("the rails " + one.name() + " and " + other.name() + " are exchanged (" + words()
                            + "): put their leads right");
                }
            }
        }
        return Optional.empty();
    }

    /** Whether what is read on the second would be right on the first. */
    private boolean holds(RailTarget should, RailTarget read) {
        return volts(read).isPresent() && should.holds(volts(read).getAsDouble());
    }
}
