package railwitness.logger.recording.store;

import java.time.Instant;

/**
 * Where the session's monotonic axis meets the wall clock.
 *
 * @param nanos time of the axis, ns
 * @param wall what the wall clock said then
 */
public record Anchor(long nanos, Instant wall) {
    /** The wall clock's time of a later or earlier instant of the axis, as long as the clock ran evenly. */
    public Instant wallOf(long otherNanos) {
        return wall.plusNanos(otherNanos - nanos);
    }
}
