package railwitness.logger.rehearsal;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.logger.sheet.SheetText;

/** A bench sheet with other ports, everything else and every comment kept. */
public final class PortsOnSheet {
    private PortsOnSheet() {}

    /** @param devices by name of the instrument */
    public static String changed(SheetText<BenchSheet> sheet, Map<String, String> devices) {
        String text = sheet.text();
        for (InstrumentSheet instrument : sheet.content().instruments()) {
            String device = devices.get(instrument.name());
            if (device != null) {
                String old = "(?m)^(\\s*port\\s*=\\s*)\""
                        + Pattern.quote(instrument.port().port()) + "\"";
                text = text.replaceAll(old, "$1\"" + Matcher.quoteReplacement(device) + "\"");
            }
        }
        return text;
    }
}
