package railwitness.logger.recording.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import railwitness.analysis.design.Design;
import railwitness.analysis.transformer.WoundDesign;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.recording.plan.Plan;

/** The three sheets of a session. */
public record Sheets(SheetText<Design> design, SheetText<BenchSheet> bench, SheetText<Plan> plan) {
    public static SheetText<Design> design(Path file) {
        return SheetText.of("design", Sheet.of(file), DesignReader::design);
    }

    /** @param file name for messages */
    public static SheetText<Design> design(String file, String text) {
        return SheetText.of("design", Sheet.of(file, text), DesignReader::design);
    }

    /** A design sheet with what it says of core and wire. */
    public static SheetText<WoundDesign> wound(Path file) {
        return SheetText.of("design", Sheet.of(file), DesignReader::wound);
    }

    /** @param file name for messages */
    public static SheetText<Plan> plan(String file, String text) {
        return SheetText.of("plan", Sheet.of(file, text), PlanReader::plan);
    }

    /** The design sheet of this session with what it says of core and wire. */
    public WoundDesign wound() {
        return Sheet.of(design.fileName(), design.text()).read(DesignReader::wound);
    }

    public static SheetText<BenchSheet> bench(Path file) {
        return SheetText.of("bench", Sheet.of(file), BenchSheet::from);
    }

    /** @param file name for messages */
    public static SheetText<BenchSheet> bench(String file, String text) {
        return SheetText.of("bench", Sheet.of(file, text), BenchSheet::from);
    }

    public static SheetText<Plan> plan(Path file) {
        return SheetText.of("plan", Sheet.of(file), PlanReader::plan);
    }

    /** The sheets of the demo, packed in the program. */
    public static Sheets demo() {
        return new Sheets(
                SheetText.of("design", packed("design.toml"), DesignReader::design),
                SheetText.of("bench", packed("bench.toml"), BenchSheet::from),
                SheetText.of("plan", packed("plan.toml"), PlanReader::plan));
    }

    /** Names of the ready-made plans. */
    public static List<String> readyPlans() {
        return List.of("soak-at-an-eighth", "soak-cycled");
    }

    /**
     * A ready-made plan.
     *
     * @param name one of {@link #readyPlans}
     */
    public static SheetText<Plan> readyPlan(String name) {
        return SheetText.of("plan", packed("/railwitness/logger/recording/plan/", name + ".toml"), PlanReader::plan);
    }

    /** A design sheet to begin with: every value in it is an example, those that must be changed say so. */
    public static SheetText<Design> newDesign() {
        return SheetText.of(
                "design", packed("/railwitness/logger/recording/sheet/", "new-unit.toml"), DesignReader::design);
    }

    private static Sheet packed(String name) {
        return packed("/railwitness/demo/", name);
    }

    private static Sheet packed(String folder, String name) {
        try (InputStream in = Sheets.class.getResourceAsStream(folder + name)) {
            return Sheet.of(name, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException("the sheet " + name + " is not in the program", e);
        }
    }
}
