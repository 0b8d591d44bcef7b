package railwitness.logger.recording.store;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import railwitness.logger.recording.event.SessionEvent;

/**
 * Compares the wall clock with the session's monotonic axis. The axis never jumps; that the wall clock did, or that the
 * computer slept, becomes an event.
 */
final class WallWatch {
    /** What a clock may be corrected by without an event: a network's time service does so all day. */
    private static final Duration STEP = Duration.ofMillis(500);

    private static final long GAP_NANOS = 30_000_000_000L;

    /** A clock that runs unevenly is written down this often. */
    private static final long ANCHOR_NANOS = 600_000_000_000L;

    private final ZoneId zone;
    private long anchoredNanos;
    private long lastNanos;
    private Instant lastWall;

    WallWatch(ZoneId zone, Instant startedWall) {
        this.zone = zone;
        this.lastWall = startedWall;
    }

    /**
     * What a look at both clocks found.
     *
     * @param anchors whether the two are worth writing down as a new anchor
     */
    record Look(boolean anchors, List<EventEntry> events) {}

    /** From here on, after an interruption: the gap is told by whoever goes on. */
    void goOn(long nanos, Instant wall) {
        lastNanos = nanos;
        lastWall = wall;
        anchoredNanos = nanos - ANCHOR_NANOS;
    }

    /** Looks at both clocks. */
    Look look(long nanos, Instant wall) {
        List<EventEntry> events = compare(nanos, wall);
        boolean anchors = !events.isEmpty() || nanos - anchoredNanos >= ANCHOR_NANOS;
        if (anchors) {
            anchoredNanos = nanos;
        }
        lastNanos = nanos;
        lastWall = wall;
        return new Look(anchors, events);
    }

    private List<EventEntry> compare(long nanos, Instant wall) {
        List<EventEntry> events = new ArrayList<>();
        Duration step = Duration.between(lastWall, wall).minusNanos(nanos - lastNanos);
        if (step.abs().compareTo(STEP) > 0) {
            events.add(new EventEntry(nanos, new SessionEvent.ClockSet(step.toMillis() / 1e3)));
        } else if (nanos - lastNanos > GAP_NANOS) {
            events.add(new EventEntry(nanos, new SessionEvent.StoodStill((nanos - lastNanos) / 1e9)));
        }
        ZoneOffset before = zone.getRules().getOffset(lastWall);
        ZoneOffset after = zone.getRules().getOffset(wall);
        if (!before.equals(after)) {
            events.add(new EventEntry(nanos, new SessionEvent.LocalTime(before.toString(), after.toString())));
        }
        return events;
    }
}
