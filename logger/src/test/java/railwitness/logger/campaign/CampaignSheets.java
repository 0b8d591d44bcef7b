package railwitness.logger.campaign;

import java.util.List;
import java.util.Map;
import railwitness.analysis.design.Design;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.fixture.ShortPlan;
import railwitness.logger.recording.rehearsal.PortsOnSheet;
import railwitness.logger.recording.sheet.DesignReader;
import railwitness.logger.recording.sheet.PlanReader;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;

/** The demo's unit and bench with a short plan. */
final class CampaignSheets {
    private static final String PLAN = ShortPlan.of(
            0.5,
            "standby",
            "power-up",
            "no-load",
            "load-sweep; loads_pct = [50]",
            "line-sweep; load_pct = 50; inputs_V = [11.0, 14.4]");

    /** All that most people know of a unit: no loss, no limit, no part but the turns. */
    private static final String SPARSE = """
            [unit]
            name = "Galley amplifier supply"
            [converter]
            filter = "capacitor"
            [input]
            nominal_V = 13.8
            [transformer]
            primary_turns = 4
            secondary_turns = 12
            [[rail]]
            name = "plus"
            nominal_V = 36.7
            full_load_A = 4
            [[rail]]
            name = "minus"
            nominal_V = -36.7
            full_load_A = 4
            """;

    private CampaignSheets() {}

    /** @param sparse with a design sheet of turns, input and rails alone */
    static Sheets onVirtualClock(boolean sparse) {
        Sheets demo = Sheets.demo();
        return new Sheets(design(sparse), demo.bench(), plan());
    }

    private static SheetText<Design> design(boolean sparse) {
        return sparse
                ? SheetText.of("design", Sheet.of("design.toml", SPARSE), DesignReader::design)
                : Sheets.demo().design();
    }

    /** @param devices by name of the instrument */
    static Sheets onDevices(Map<String, String> devices, boolean sparse) {
        Sheets demo = Sheets.demo();
        String bench = PortsOnSheet.changed(demo.bench(), devices);
        return new Sheets(
                design(sparse), SheetText.of("bench", Sheet.of("bench.toml", bench), BenchSheet::from), plan());
    }

    private static SheetText<railwitness.logger.recording.plan.Plan> plan() {
        return SheetText.of("plan", Sheet.of("plan.toml", PLAN), PlanReader::plan);
    }

    static List<String> instruments() {
        return Sheets.demo().bench().content().instruments().stream()
                .map(InstrumentSheet::name)
                .toList();
    }
}
