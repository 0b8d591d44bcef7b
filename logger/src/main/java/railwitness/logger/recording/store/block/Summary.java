package railwitness.logger.recording.store.block;

/**
 * What a stretch of a channel comes to.
 *
 * @param spanSeconds length of the stretch, s
 * @param startSeconds its beginning on the session's axis, a multiple of the length, s
 * @param readings how many readings were answered in it
 * @param measured how many of them are numbers
 * @param lowest least number; says nothing when there is none
 * @param highest greatest number
 * @param total sum of the numbers in recording order
 */
public record Summary(
        int spanSeconds, long startSeconds, long readings, long measured, double lowest, double highest, double total) {
    private static final long SECOND_NANOS = 1_000_000_000L;

    /** The lengths for which summaries are kept, s, ascending. */
    public static int[] spans() {
        return new int[] {2, 10, 60, 600, 3600};
    }

    /** Beginning of the stretch that holds the given time, s. */
    public static long startOf(long nanos, int spanSeconds) {
        return Math.floorDiv(nanos, spanSeconds * SECOND_NANOS) * spanSeconds;
    }
}
