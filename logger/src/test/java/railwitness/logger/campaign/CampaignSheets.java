package railwitness.logger.campaign;

import java.util.List;
import java.util.Map;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.rehearsal.PortsOnSheet;
import railwitness.logger.sheet.PlanReader;
import railwitness.logger.sheet.SheetText;
import railwitness.logger.sheet.Sheets;

/** The demo's unit and bench with a short plan. */
final class CampaignSheets {
    private static final String PLAN = """
            [plan]
            settle_at_most_s = 0
            average_s = 0.5
            [[stage]]
            kind = "standby"
            [[stage]]
            kind = "power-up"
            current_limit_A = 5
            [[stage]]
            kind = "no-load"
            [[stage]]
            kind = "load-sweep"
            loads_pct = [50]
            [[stage]]
            kind = "line-sweep"
            load_pct = 50
            inputs_V = [11.0, 14.4]
            """;

    private CampaignSheets() {}

    static Sheets onVirtualClock() {
        Sheets demo = Sheets.demo();
        return new Sheets(demo.design(), demo.bench(), plan());
    }

    /** @param devices by name of the instrument */
    static Sheets onDevices(Map<String, String> devices) {
        Sheets demo = Sheets.demo();
        String bench = PortsOnSheet.changed(demo.bench(), devices);
        return new Sheets(
                demo.design(), SheetText.of("bench", Sheet.of("bench.toml", bench), BenchSheet::from), plan());
    }

    private static SheetText<railwitness.logger.plan.Plan> plan() {
        return SheetText.of("plan", Sheet.of("plan.toml", PLAN), PlanReader::plan);
    }

    static List<String> instruments() {
        return Sheets.demo().bench().content().instruments().stream()
                .map(InstrumentSheet::name)
                .toList();
    }
}
