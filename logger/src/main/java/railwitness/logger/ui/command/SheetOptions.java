package railwitness.logger.ui.command;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import railwitness.logger.recording.sheet.Sheets;

/** The three sheets of a session, as options. */
final class SheetOptions {
    @Option(names = "--design", paramLabel = "FILE", description = "design sheet, what the unit should be")
    Path design;

    @Option(names = "--bench", paramLabel = "FILE", description = "bench sheet, which instrument reads what")
    Path bench;

    @Option(names = "--plan", paramLabel = "FILE", description = "plan, what is done in which order")
    Path plan;

    /** The sheets given; those left out are the demo's. A design sheet needs a plan of its own only if it has one. */
    Sheets orDemo() {
        Sheets demo = Sheets.demo();
        return new Sheets(
                design == null ? demo.design() : Sheets.design(design),
                bench == null ? demo.bench() : Sheets.bench(bench),
                plan == null ? demo.plan() : Sheets.plan(plan));
    }

    /** All three, each of which must be given. */
    Sheets all() {
        require(design, "--design");
        require(bench, "--bench");
        require(plan, "--plan");
        return new Sheets(Sheets.design(design), Sheets.bench(bench), Sheets.plan(plan));
    }

    private static void require(Path file, String option) {
        if (file == null) {
            throw new BadInput(option + " is missing: a run on real instruments needs design, bench and plan");
        }
    }
}
