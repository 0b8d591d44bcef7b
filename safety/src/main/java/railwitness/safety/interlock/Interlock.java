package railwitness.safety.interlock;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Reading;

/**
 * The state of the interlock; {@link #next} gives the one after an event and leaves this one as it is.
 *
 * <ul>
 *   <li>{@link #permitted()} holds only while there is no trip and every watch was heard, is fresh and is inside;
 *       what a person reads ({@link Watch#BY_SIGHT}) objects only once it was read.
 *   <li>In a powered phase the first objection becomes a {@link Trip}, which latches. In OFF objections only stand.
 *   <li>A reading is judged by the limits of the phase in which it was asked for. An overload is outside, unless the
 *       limits are open. A silence does not refresh a watch, so the watch trips when its age is over.
 *   <li>The age of a value counts from the question, not from the answer.
 *   <li>A derived value is taken only from readings all asked for after the last change of a set point or phase; where
 *       none comes for the age of the watch, that is a silence too.
 *   <li>Time never runs backwards: an event with an earlier time is judged at the latest time known.
 * </ul>
 */
public final class Interlock {
    private static final int PHASES_KEPT = 8;

    private record Entered(Phase phase, long sinceNanos) {}

    private final List<Watch> watches;
    private final Duration longestPause;
    private final long nowNanos;
    private final long changedNanos;
    private final List<Entered> phases;
    private final Map<Channel, Reading> last;
    private final Map<Channel, Missing> silences;
    private final Map<String, Judgement> judgements;
    private final Optional<Trip> trip;

    private Interlock(
            List<Watch> watches,
            Duration longestPause,
            long nowNanos,
            long changedNanos,
            List<Entered> phases,
            Map<Channel, Reading> last,
            Map<Channel, Missing> silences,
            Map<String, Judgement> judgements,
            Optional<Trip> trip) {
        this.watches = watches;
        this.longestPause = longestPause;
        this.nowNanos = nowNanos;
        this.changedNanos = changedNanos;
        this.phases = phases;
        this.last = last;
        this.silences = silences;
        this.judgements = judgements;
        this.trip = trip;
    }

    /**
     * An interlock in phase OFF that has heard nothing yet.
     *
     * @param watches at least one, with different names
     * @param longestPause longest time between two events while powered, above zero; not longer than the guardian's
     *     patience, so that a program that slept past it trips before it does anything else
     * @param nowNanos the time now, ns on the session's axis
     */
    public static Interlock of(List<Watch> watches, Duration longestPause, long nowNanos) {
        Set<String> names = new HashSet<>();
        watches.forEach(watch -> {
            if (!names.add(watch.name())) {
                throw new IllegalArgumentException("two watches are named '" + watch.name() + "'");
            }
        });
        if (names.isEmpty()) {
            throw new IllegalArgumentException("at least one channel must be watched before power");
        }
        if (longestPause.isNegative() || longestPause.isZero()) {
            throw new IllegalArgumentException("longest pause must be above zero, not " + longestPause);
        }
        return fresh(List.copyOf(watches), longestPause, nowNanos);
    }

    private static Interlock fresh(List<Watch> watches, Duration longestPause, long nowNanos) {
        List<Entered> off = List.of(new Entered(Phase.OFF, nowNanos));
        return new Interlock(
                watches, longestPause, nowNanos, nowNanos, off, Map.of(), Map.of(), Map.of(), Optional.empty());
    }

    /** True when the output may be on. */
    public boolean permitted() {
        return trip.isEmpty() && objections().findAny().isEmpty();
    }

    /** The trip that latched, until a person's reset. */
    public Optional<Trip> trip() {
        return trip;
    }

    public Phase phase() {
        return phases.get(phases.size() - 1).phase();
    }

    public List<Watch> watches() {
        return watches;
    }

    /** What stands against power now, in words; empty when nothing does. */
    public List<String> against() {
        return Stream.concat(trip.stream(), objections())
                .map(Trip::words)
                .distinct()
                .toList();
    }

    /** The state after the event. */
    public Interlock next(Event event) {
        if (event instanceof Event.Reset) {
            return fresh(watches, longestPause, Math.max(nowNanos, event.atNanos()));
        }
        Interlock after = movedTo(event.atNanos());
        if (event instanceof Event.Read read) {
            after = after.heard(read.reading());
        } else if (event instanceof Event.Enter enter) {
            after = after.entered(enter.phase());
        } else if (event instanceof Event.Changed) {
            after = after.changed();
        } else if (event instanceof Event.Stop stop) {
            after = after.stopped(Trip.Kind.STOPPED, stop.by(), stop.words());
        } else if (event instanceof Event.PersonStop stop) {
            after = after.stopped(Trip.Kind.PERSON, "person", stop.words());
        }
        return after.judged();
    }

    private Interlock movedTo(long atNanos) {
        long later = Math.max(nowNanos, atNanos);
        Interlock moved = with(later, changedNanos, phases, last, silences, judgements, trip);
        if (phase().powered() && later - nowNanos > longestPause.toNanos()) {
            String words = "the program stood still for " + seconds(later - nowNanos);
            return moved.latched(Trip.without(Trip.Kind.STOOD_STILL, "pause", later, words));
        }
        return moved;
    }

    private Interlock entered(Phase phase) {
        List<Entered> more = new ArrayList<>(phases);
        more.add(new Entered(phase, nowNanos));
        List<Entered> kept = List.copyOf(more.subList(Math.max(0, more.size() - PHASES_KEPT), more.size()));
        return with(nowNanos, nowNanos, kept, last, silences, judgements, trip);
    }

    private Interlock changed() {
        return with(nowNanos, nowNanos, phases, last, silences, judgements, trip);
    }

    private Interlock stopped(Trip.Kind kind, String by, String words) {
        return latched(Trip.without(kind, by, nowNanos, words));
    }

    private Interlock heard(Reading reading) {
        if (reading instanceof Missing missing) {
            Map<Channel, Missing> more = new HashMap<>(silences);
            more.put(missing.channel(), missing);
            return with(nowNanos, changedNanos, phases, last, more, judgements, trip);
        }
        Map<Channel, Reading> newest = new HashMap<>(last);
        newest.merge(reading.channel(), reading, Interlock::later);
        Map<String, Judgement> all = new HashMap<>(judgements);
        for (Watch watch : watches) {
            if (watch.subject().channels().contains(reading.channel())) {
                judge(watch, reading, newest).ifPresent(one -> all.merge(watch.name(), one, Interlock::worseOrLater));
            }
        }
        return with(nowNanos, changedNanos, phases, newest, silences, all, trip);
    }

    private Optional<Judgement> judge(Watch watch, Reading reading, Map<Channel, Reading> newest) {
        List<Reading> members = watch.derived()
                ? watch.subject().channels().stream()
                        .map(newest::get)
                        .filter(member -> member != null && member.requestedNanos() >= changedNanos)
                        .toList()
                : List.of(reading);
        if (members.size() < watch.subject().channels().size()) {
            return Optional.empty();
        }
        long asked = members.stream().mapToLong(Reading::requestedNanos).min().orElseThrow();
        long answered = members.stream().mapToLong(Reading::repliedNanos).max().orElseThrow();
        List<Limits> allowed =
                phasesDuring(asked, answered).map(watch.limits()::get).toList();
        if (!members.stream().allMatch(Measured.class::isInstance)) {
            Limits limits = allowed.stream().filter(Limits::isOpen).findFirst().orElse(allowed.get(0));
            return Optional.of(new Judgement(asked, limits.isOpen(), OptionalDouble.empty(), limits, reading));
        }
        double value = watch.subject().value(channel -> members.stream()
                .filter(member -> member.channel().equals(channel))
                .mapToDouble(member -> ((Measured) member).value())
                .findFirst()
                .orElseThrow());
        Limits limits =
                allowed.stream().filter(one -> one.hold(value)).findFirst().orElse(allowed.get(0));
        return Optional.of(new Judgement(asked, limits.hold(value), OptionalDouble.of(value), limits, reading));
    }

    private Interlock judged() {
        if (trip.isPresent() || !phase().powered()) {
            return this;
        }
        return objections().findFirst().map(this::latched).orElse(this);
    }

    private Stream<Trip> objections() {
        return watches.stream().flatMap(watch -> objection(watch).stream());
    }

    private Optional<Trip> objection(Watch watch) {
        Judgement judgement = judgements.get(watch.name());
        if (judgement == null && watch.bySight()) {
            return Optional.empty();
        }
        if (judgement == null) {
            return Optional.of(silent(watch, watch.name() + " has not been read yet"));
        }
        if (!judgement.inside()) {
            return Optional.of(judgement.outside(watch, nowNanos));
        }
        long old = nowNanos - judgement.askedNanos();
        if (old > watch.age().toNanos()) {
            return Optional.of(silent(watch, watch.name() + " was not read for " + seconds(old)));
        }
        return Optional.empty();
    }

    private Trip silent(Watch watch, String words) {
        String reason = watch.subject().channels().stream()
                .filter(silences::containsKey)
                .map(silences::get)
                .filter(missing -> !last.containsKey(missing.channel())
                        || missing.repliedNanos() > last.get(missing.channel()).repliedNanos())
                .map(missing -> " (" + missing.channel() + ": " + missing.reason() + ")")
                .findFirst()
                .orElse("");
        return Trip.without(Trip.Kind.SILENT, watch.name(), nowNanos, words + reason);
    }

    private Phase phaseAt(long atNanos) {
        Phase found = phases.get(0).phase();
        for (Entered entered : phases) {
            found = entered.sinceNanos() <= atNanos ? entered.phase() : found;
        }
        return found;
    }

    /**
     * A reading that was under way while the unit was switched on is asked before and taken after: it may be what either
     * phase allows. The next one is asked in the new phase alone.
     */
    private Stream<Phase> phasesDuring(long askedNanos, long answeredNanos) {
        return Stream.concat(
                Stream.of(phaseAt(askedNanos)),
                phases.stream()
                        .filter(entered -> entered.sinceNanos() > askedNanos && entered.sinceNanos() <= answeredNanos)
                        .map(Entered::phase));
    }

    private static Reading later(Reading one, Reading other) {
        return other.requestedNanos() >= one.requestedNanos() ? other : one;
    }

    private static Judgement worseOrLater(Judgement known, Judgement now) {
        return now.askedNanos() >= known.askedNanos() || !now.inside() ? now : known;
    }

    private Interlock latched(Trip first) {
        return trip.isPresent()
                ? this
                : with(nowNanos, changedNanos, phases, last, silences, judgements, Optional.of(first));
    }

    private Interlock with(
            long now,
            long changed,
            List<Entered> entered,
            Map<Channel, Reading> newest,
            Map<Channel, Missing> silent,
            Map<String, Judgement> judged,
            Optional<Trip> tripped) {
        return new Interlock(watches, longestPause, now, changed, entered, newest, silent, judged, tripped);
    }

    private static String seconds(long nanos) {
        return String.format(Locale.ROOT, "%.1f s", nanos / 1e9);
    }
}
