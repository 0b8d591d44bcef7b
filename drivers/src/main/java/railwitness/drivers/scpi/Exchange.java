package railwitness.drivers.scpi;

/**
 * One exchange with an instrument.
 *
 * @param atNanos when it began, ns of the session's monotonic axis
 * @param instrument its name in the bench sheet
 * @param polling true for the regular questions of a round, false for setting up and all commands
 * @param sent the message without terminator
 * @param received the reply without terminator; empty where none was asked for or none came; a block is only counted
 * @param trouble what went wrong, in words; empty when nothing did
 */
public record Exchange(long atNanos, String instrument, boolean polling, String sent, String received, String trouble) {
    /** True when it ended as it should. */
    public boolean good() {
        return trouble.isEmpty();
    }
}
