package railwitness.drivers.reading;

/**
 * No number came.
 *
 * @param reason in a technician's words: no answer in 1 s, not a number, unplugged
 */
public record Missing(Channel channel, String reason, long requestedNanos, long repliedNanos) implements Reading {
    /** The reason where the instrument's port has gone. */
    public static final String UNPLUGGED = "unplugged";

    /** Whether the instrument's port has gone. */
    public boolean isUnplugged() {
        return reason.equals(UNPLUGGED);
    }
}
