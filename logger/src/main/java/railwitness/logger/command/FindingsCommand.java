package railwitness.logger.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What a session found. */
@Command(
        name = "findings",
        mixinStandardHelpOptions = true,
        description = "Works out what a session found and prints it as a sheet, or as JSON for another program.",
        footer = {"", "Example: railwitness findings 0412.session --json"})
final class FindingsCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SESSION", description = "a session file")
    private Path session;

    @Option(names = "--json", description = "print JSON instead of a sheet")
    private boolean json;

    @Override
    public Integer call() {
        return FindingsPrint.of(session, spec.commandLine().getOut(), json);
    }
}
