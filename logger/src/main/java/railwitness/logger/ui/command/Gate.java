package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.util.List;
import railwitness.logger.recording.record.BriefingMaker;
import railwitness.logger.recording.sheet.SheetRemark;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.sheet.SheetsCheck;

/** What refuses power whoever takes responsibility; a rehearsal refuses the same. */
final class Gate {
    private Gate() {}

    /**
     * Says what is worth a look, and refuses what cannot be.
     *
     * @throws railwitness.drivers.sheet.SheetException where sheets say what cannot be
     * @throws BadInput where cautions refuse power
     */
    static void pass(Sheets sheets, PrintWriter err) {
        SheetsCheck.of(sheets).stream()
                .filter(remark -> !remark.refuses())
                .map(SheetRemark::toString)
                .forEach(err::println);
        SheetsCheck.refuse(sheets);
        List<String> refusals = BriefingMaker.of(sheets).refusals();
        if (!refusals.isEmpty()) {
            throw new BadInput("no power: " + String.join("; ", refusals));
        }
    }
}
