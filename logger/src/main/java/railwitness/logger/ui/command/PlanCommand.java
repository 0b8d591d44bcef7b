package railwitness.logger.ui.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;

/** Lists the ready-made plans, or gives one of them. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = {
            "Gives a ready-made plan to start from.",
            "Without a name it lists them. With one it prints the plan, or writes it to a new file; "
                    + "change loads and times in it as the unit needs them."
        },
        footer = {"", "Example: railwitness plan soak-at-an-eighth --out plan.toml"})
final class PlanCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "NAME", description = "which plan")
    private String name;

    @Option(names = "--out", paramLabel = "FILE", description = "file to make")
    private Path out;

    @Override
    public Integer call() {
        PrintWriter print = spec.commandLine().getOut();
        if (name == null) {
            for (String each : Sheets.readyPlans()) {
                Plan plan = Sheets.readyPlan(each).content();
                print.println(each + ": " + plan.name() + ", " + plan.stages().size() + " stages");
            }
            print.flush();
            return ExitCode.DONE;
        }
        if (!Sheets.readyPlans().contains(name)) {
            throw new BadInput(
                    "no ready-made plan '" + name + "'; there are " + String.join(", ", Sheets.readyPlans()));
        }
        SheetText<Plan> plan = Sheets.readyPlan(name);
        if (out == null) {
            print.print(plan.text());
            print.flush();
            return ExitCode.DONE;
        }
        try {
            Files.writeString(out, plan.text(), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        } catch (FileAlreadyExistsException e) {
            throw new BadInput(out + " is there already; name another file");
        } catch (IOException e) {
            throw new BadInput(out + " cannot be written: " + e.getMessage());
        }
        return ExitCode.DONE;
    }
}
