package railwitness.logger.recording.rehearsal;

import java.util.Map;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.TomlLexer;
import railwitness.logger.recording.sheet.SheetEdit;
import railwitness.logger.recording.sheet.SheetText;

/** A bench sheet with other ports, everything else and every comment kept. */
public final class PortsOnSheet {
    private static final String INSTRUMENT = "[[instrument]]";

    private PortsOnSheet() {}

    /** @param devices by name of the instrument */
    public static String changed(SheetText<BenchSheet> sheet, Map<String, String> devices) {
        SheetEdit edit = new SheetEdit(sheet.text());
        for (int place = 0; place < edit.count(INSTRUMENT); place++) {
            String device = devices.get(edit.text(INSTRUMENT, place, "name"));
            if (device != null) {
                edit.set(INSTRUMENT, place, "port", TomlLexer.quoted(device));
            }
        }
        return edit.text();
    }
}
