package railwitness.logger.recording.sheet;

import railwitness.analysis.design.Remark;
import railwitness.drivers.sheet.KeyLine;
import railwitness.drivers.sheet.SheetFault;

/**
 * What shows only when tables or sheets are compared, at its place in a sheet.
 *
 * @param kind which of the three sheets
 * @param refuses whether there is no power, and no rehearsal either, until it is put right
 * @param words the sentence without file, line and key
 */
public record SheetRemark(SheetKind kind, boolean refuses, SheetFault fault, String words) {
    static SheetRemark of(SheetKind kind, SheetText<?> sheet, Remark remark) {
        int line = KeyLine.of(sheet.text(), remark.table(), remark.place(), remark.key());
        String sentence = remark.weight().word() + ": " + remark.words();
        String placed = remark.table() + " " + remark.key() + " " + sentence;
        return new SheetRemark(kind, remark.refuses(), new SheetFault(sheet.fileName(), line, placed), sentence);
    }

    @Override
    public String toString() {
        return fault.toString();
    }
}
