package railwitness.logger.recording.store;

/**
 * A sheet kept as it was written.
 *
 * @param kind design, bench or plan; any other word is kept too
 * @param fileName name of the file it came from, without folders
 * @param text the whole text, character for character
 */
public record SheetEntry(String kind, String fileName, String text) implements Entry {}
