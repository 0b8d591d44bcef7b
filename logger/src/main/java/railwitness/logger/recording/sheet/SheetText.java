package railwitness.logger.recording.sheet;

import java.util.function.Function;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.sheet.SheetTable;

/**
 * A sheet as it stands in its file, with what it says.
 *
 * @param kind design, bench or plan
 * @param fileName without folders
 * @param text character for character
 * @param content what was read from it
 */
public record SheetText<T>(String kind, String fileName, String text, T content) {
    /** @throws railwitness.drivers.sheet.SheetException with all faults */
    public static <T> SheetText<T> of(String kind, Sheet sheet, Function<SheetTable, T> reader) {
        return new SheetText<>(kind, sheet.file(), sheet.text(), sheet.read(reader));
    }
}
