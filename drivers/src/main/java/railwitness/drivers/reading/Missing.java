package railwitness.drivers.reading;

/**
 * No number came.
 *
 * @param reason in a technician's words: no answer in 1 s, not a number, unplugged
 */
public record Missing(Channel channel, String reason, long requestedNanos, long repliedNanos) implements Reading {}
