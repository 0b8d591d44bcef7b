package railwitness.logger.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.drivers.sheet.SheetException;
import railwitness.logger.sheet.SheetKind;

/** Says all faults of design, bench and plan sheets at once. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Reads design, bench and plan sheets and says every fault with file, line and key.",
        footer = {"", "Example: railwitness check design.toml bench.toml plan.toml"})
final class CheckCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(
            arity = "1..*",
            paramLabel = "SHEET",
            description = "TOML files; what they are is seen from their tables")
    private List<Path> files;

    @Override
    public Integer call() {
        List<String> faults = new ArrayList<>();
        for (Path file : files) {
            try {
                SheetKind kind = SheetKind.check(file);
                spec.commandLine().getOut().println(file + ": a " + kind.word() + ", in order");
            } catch (SheetException e) {
                e.faults().forEach(fault -> faults.add(fault.toString()));
            }
        }
        faults.forEach(spec.commandLine().getErr()::println);
        return faults.isEmpty() ? ExitCode.DONE : ExitCode.BAD_INPUT;
    }
}
