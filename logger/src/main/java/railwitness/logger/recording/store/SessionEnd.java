package railwitness.logger.recording.store;

/**
 * How and when a session was brought to its end.
 *
 * @param nanos the session's time, ns
 * @param state complete, stopped or tripped
 */
public record SessionEnd(long nanos, SessionState state) {}
