package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.analysis.design.Design;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.SheetException;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.record.Outlook;
import railwitness.logger.recording.sheet.SheetKind;
import railwitness.logger.recording.sheet.SheetRemark;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.sheet.SheetsCheck;

/** Says all faults of design, bench and plan sheets at once, what cannot be, what to look at, and what is predicted. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Reads design, bench and plan sheets and says what is wrong with them.",
            "Every fault is said with file, line and key; then what the sheets say that cannot be, "
                    + "what is worth a look, and what the design sheet predicts. Sheets given together are "
                    + "compared with each other, such as the loads of a plan with those of the design."
        },
        footer = {"", "Example: railwitness check design.toml bench.toml plan.toml"})
final class CheckCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(
            arity = "1..*",
            paramLabel = "SHEET",
            description = "TOML files; their tables show which sheet each one is")
    private List<Path> files;

    private final Map<Path, SheetKind> read = new LinkedHashMap<>();
    private final Set<String> refused = new HashSet<>();
    private final List<String> faults = new ArrayList<>();
    private final List<SheetText<Design>> designs = new ArrayList<>();
    private final List<SheetText<BenchSheet>> benches = new ArrayList<>();
    private final List<SheetText<Plan>> plans = new ArrayList<>();

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        files.forEach(this::read);
        Optional<SheetText<BenchSheet>> bench = benches.stream().findFirst();
        Optional<SheetText<Plan>> plan = plans.stream().findFirst();
        List<Optional<SheetText<Design>>> units = designs.isEmpty()
                ? List.of(Optional.empty())
                : designs.stream().map(Optional::of).toList();
        for (Optional<SheetText<Design>> unit : units) {
            SheetsCheck.of(unit, bench, plan).forEach(remark -> say(remark, out));
        }
        read.forEach((file, kind) -> {
            if (!refused.contains(kind + file.getFileName().toString())) {
                out.println(file + ": a " + kind.word() + ", in order");
            }
        });
        designs.forEach(sheet -> predicted(sheet, plan, out));
        out.flush();
        faults.forEach(spec.commandLine().getErr()::println);
        spec.commandLine().getErr().flush();
        return faults.isEmpty() ? ExitCode.DONE : ExitCode.BAD_INPUT;
    }

    private void read(Path file) {
        try {
            SheetKind kind = SheetKind.check(file);
            switch (kind) {
                case DESIGN -> designs.add(Sheets.design(file));
                case BENCH -> benches.add(Sheets.bench(file));
                case PLAN -> plans.add(Sheets.plan(file));
            }
            read.put(file, kind);
        } catch (SheetException e) {
            e.faults().forEach(fault -> faults.add(fault.toString()));
        }
    }

    private void say(SheetRemark remark, PrintWriter out) {
        if (remark.refuses()) {
            refused.add(remark.kind() + remark.fault().file());
            if (!faults.contains(remark.toString())) {
                faults.add(remark.toString());
            }
        } else {
            out.println(remark);
        }
    }

    private static void predicted(SheetText<Design> sheet, Optional<SheetText<Plan>> plan, PrintWriter out) {
        out.println();
        out.println(sheet.content().unit().name() + ", by its design sheet:");
        Outlook.lines(
                        sheet.content(),
                        SheetsCheck.plannedVolts(Optional.of(sheet.content()), plan.map(SheetText::content)))
                .forEach(line -> out.println("  " + line));
    }
}
