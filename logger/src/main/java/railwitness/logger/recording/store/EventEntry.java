package railwitness.logger.recording.store;

/**
 * Something that happened.
 *
 * @param nanos when, ns on the session's axis
 * @param what one word or two to sort by: armed, on, trip, clock, disk
 * @param text in a technician's words
 */
public record EventEntry(long nanos, String what, String text) implements Entry {}
