package railwitness.drivers.sheet;

/**
 * One fault of a sheet.
 *
 * @param file name of the sheet's file
 * @param line counted from 1
 * @param text key, value and what is allowed, in words
 */
public record SheetFault(String file, int line, String text) {
    @Override
    public String toString() {
        return file + ":" + line + ": " + text;
    }
}
