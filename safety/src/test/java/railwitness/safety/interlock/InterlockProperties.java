package railwitness.safety.interlock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Reading;

/** Seeded random runs, judged by an examiner that keeps the whole history and knows nothing of the interlock's state. */
class InterlockProperties {
    private static final long SEED = 20261125L;
    private static final List<Channel> CHANNELS =
            List.of(Channel.of("input.current"), Channel.of("plus.voltage"), Channel.of("minus.voltage"));
    private static final long PAUSE_NANOS = 1_000;

    @Test
    void neverPermittedWhileALimitIsExceededOrAChannelIsStale() {
        Random random = new Random(SEED);
        int permitted = 0;
        int refused = 0;
        for (int run = 0; run < 600; run++) {
            List<Watch> watches = watches(random);
            List<Event> events = new ArrayList<>();
            Interlock interlock = Interlock.of(watches, Duration.ofNanos(PAUSE_NANOS), 0);
            long now = 0;
            for (int i = 0; i < 60; i++) {
                now += random.nextInt(random.nextInt(40) == 0 ? 2000 : 60);
                Event event = event(random, now);
                events.add(event);
                interlock = interlock.next(event);
                boolean danger = danger(watches, events, now);
                if (interlock.permitted() && danger) {
                    fail("permitted in danger: seed %d run %d event %d %s", SEED, run, i, event);
                }
                permitted += interlock.permitted() ? 1 : 0;
                refused += interlock.permitted() ? 0 : 1;
            }
        }
        assertThat(permitted)
                .as("runs that were permitted, or the test shows nothing")
                .isGreaterThan(1_500);
        assertThat(refused).isGreaterThan(1_500);
    }

    @Test
    void aTripEndsOnlyWithAReset() {
        Random random = new Random(SEED + 1);
        for (int run = 0; run < 600; run++) {
            Interlock interlock = Interlock.of(watches(random), Duration.ofNanos(PAUSE_NANOS), 0);
            long now = 0;
            for (int i = 0; i < 60; i++) {
                now += random.nextInt(120);
                Event event = event(random, now);
                Interlock next = interlock.next(event);
                if (interlock.trip().isPresent() && !(event instanceof Event.Reset)) {
                    assertThat(next.trip()).as("seed %d run %d", SEED + 1, run).isEqualTo(interlock.trip());
                }
                interlock = next;
            }
        }
    }

    @Test
    void whatIsInsideAndFreshIsPermitted() {
        Random random = new Random(SEED + 2);
        for (int run = 0; run < 40; run++) {
            List<Watch> watches = watches(random);
            Interlock interlock = Interlock.of(watches, Duration.ofNanos(PAUSE_NANOS), 0);
            for (long now = 1; now < 3_000; now += 20) {
                for (Channel channel : CHANNELS) {
                    interlock = interlock.next(new Event.Read(new Measured(channel, 5, now, now)));
                }
                if (now == 1) {
                    interlock = interlock.next(new Event.Enter(Phase.UP, now));
                }
                assertThat(interlock.against())
                        .as("seed %d run %d", SEED + 2, run)
                        .isEmpty();
            }
        }
    }

    private static List<Watch> watches(Random random) {
        List<Watch> watches = new ArrayList<>();
        for (Channel channel : CHANNELS) {
            Duration age = Duration.ofNanos(100 + random.nextInt(800));
            watches.add(Watch.of(channel.toString(), channel, age, Limits.between(0, 10))
                    .during(Phase.INRUSH, Limits.between(0, 20))
                    .during(Phase.STANDBY, Limits.between(0, 8)));
        }
        watches.add(Watch.of(
                "imbalance",
                new Subject.Imbalance(CHANNELS.get(1), CHANNELS.get(2)),
                Duration.ofNanos(900),
                Limits.atMost(6)));
        return watches;
    }

    private static Event event(Random random, long now) {
        int pick = random.nextInt(200);
        if (pick < 2) {
            return new Event.Reset("A. Keel", now);
        }
        if (pick < 20) {
            return new Event.Tick(now);
        }
        if (pick < 24) {
            return new Event.Enter(Phase.values()[random.nextInt(Phase.values().length)], now);
        }
        if (pick < 27) {
            return new Event.Changed(now);
        }
        if (pick < 28) {
            return new Event.Stop("person", "stopped by hand", now);
        }
        Channel channel = CHANNELS.get(random.nextInt(CHANNELS.size()));
        long asked = now - Math.min(now, random.nextInt(30));
        if (pick < 34) {
            return new Event.Read(new Missing(channel, "no answer", asked, now));
        }
        if (pick < 36) {
            return new Event.Read(new Overload(channel, asked, now));
        }
        double value = random.nextInt(30) == 0 ? 30 * random.nextDouble() - 5 : 3 + 3 * random.nextDouble();
        return new Event.Read(new Measured(channel, value, asked, now));
    }

    /** The plain meaning of safe, worked out afresh from the history since the last reset. */
    private static boolean danger(List<Watch> watches, List<Event> history, long now) {
        int start = 0;
        for (int i = 0; i < history.size(); i++) {
            start = history.get(i) instanceof Event.Reset ? i + 1 : start;
        }
        List<Event> events = history.subList(start, history.size());
        long since = start == 0 ? 0 : history.get(start - 1).atNanos();
        return watches.stream()
                        .filter(watch -> watch.subject().channels().size() == 1)
                        .anyMatch(watch -> outsideOrStale(watch, events, since, now))
                || imbalanced(events)
                || stoppedOrPaused(events, since);
    }

    private static boolean outsideOrStale(Watch watch, List<Event> events, long since, long now) {
        Channel channel = watch.subject().channels().iterator().next();
        long freshest = Long.MIN_VALUE;
        boolean lastOutside = false;
        boolean outsideInPower = false;
        for (int i = 0; i < events.size(); i++) {
            if (events.get(i) instanceof Event.Read read
                    && read.reading().channel().equals(channel)
                    && !(read.reading() instanceof Missing)) {
                Reading reading = read.reading();
                Phase asked = phaseAt(events.subList(0, i), reading.requestedNanos());
                boolean inside = reading instanceof Measured measured
                        && watch.limits().get(asked).hold(measured.value());
                if (reading.requestedNanos() >= freshest) {
                    freshest = reading.requestedNanos();
                    lastOutside = !inside;
                }
                Phase current = phaseAt(events.subList(0, i), Long.MAX_VALUE);
                outsideInPower |= !inside && current.powered();
            }
        }
        boolean stale =
                freshest == Long.MIN_VALUE || now - freshest > watch.age().toNanos();
        return lastOutside || outsideInPower || stale;
    }

    private static boolean imbalanced(List<Event> events) {
        Map<Channel, Reading> newest = new HashMap<>();
        long changed = Long.MIN_VALUE;
        for (int i = 0; i < events.size(); i++) {
            Event event = events.get(i);
            if (event instanceof Event.Enter || event instanceof Event.Changed) {
                changed = event.atNanos();
            } else if (event instanceof Event.Read read && !(read.reading() instanceof Missing)) {
                newest.merge(
                        read.reading().channel(),
                        read.reading(),
                        (a, b) -> b.requestedNanos() >= a.requestedNanos() ? b : a);
                boolean rail = !read.reading().channel().equals(CHANNELS.get(0));
                boolean powered = phaseAt(events.subList(0, i), Long.MAX_VALUE).powered();
                if (rail && powered && apart(newest.get(CHANNELS.get(1)), newest.get(CHANNELS.get(2)), changed)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean apart(Reading plus, Reading minus, long changed) {
        return plus instanceof Measured one
                && minus instanceof Measured other
                && one.requestedNanos() >= changed
                && other.requestedNanos() >= changed
                && Math.abs(Math.abs(one.value()) - Math.abs(other.value())) > 6;
    }

    private static boolean stoppedOrPaused(List<Event> events, long since) {
        long before = since;
        Phase phase = Phase.OFF;
        for (Event event : events) {
            if (event instanceof Event.Stop || (phase.powered() && event.atNanos() - before > PAUSE_NANOS)) {
                return true;
            }
            phase = event instanceof Event.Enter enter ? enter.phase() : phase;
            before = event.atNanos();
        }
        return false;
    }

    private static Phase phaseAt(List<Event> events, long atNanos) {
        Phase phase = Phase.OFF;
        for (Event event : events) {
            phase = event instanceof Event.Enter enter && enter.atNanos() <= atNanos ? enter.phase() : phase;
        }
        return phase;
    }
}
