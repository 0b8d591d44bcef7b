package railwitness.logger.recording.store;

/**
 * A person's remark.
 *
 * @param nanos when it was written, ns
 * @param author who wrote it; empty when not said
 * @param text the remark
 */
public record NoteEntry(long nanos, String author, String text) implements Entry {}
