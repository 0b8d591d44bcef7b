package railwitness.logger.recording.store;

/**
 * A stretch of the session's monotonic axis.
 *
 * @param fromNanos first instant inside, ns
 * @param toNanos first instant no longer inside, ns; never before {@code fromNanos}
 */
public record TimeSpan(long fromNanos, long toNanos) {
    /** All of a session. */
    public static final TimeSpan ALL = new TimeSpan(Long.MIN_VALUE, Long.MAX_VALUE);

    public TimeSpan {
        if (toNanos < fromNanos) {
            throw new IllegalArgumentException(
                    "a span must not end (" + toNanos + " ns) before it begins (" + fromNanos + " ns)");
        }
    }

    public static TimeSpan ofSeconds(double from, double to) {
        return new TimeSpan(Math.round(from * 1e9), Math.round(to * 1e9));
    }

    public boolean holds(long nanos) {
        return nanos >= fromNanos && nanos < toNanos;
    }
}
