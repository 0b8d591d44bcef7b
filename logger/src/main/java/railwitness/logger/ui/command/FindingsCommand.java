package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.analysis.supply.Figure;
import railwitness.logger.reporting.findings.BudgetText;
import railwitness.logger.reporting.findings.FindingsJson;
import railwitness.logger.reporting.findings.SessionFindings;

/** What a session found. */
@Command(
        name = "findings",
        mixinStandardHelpOptions = true,
        description = {
            "Works out what a session found and prints it.",
            "The sheet is for people, --json for other programs, --budget for where the uncertainty "
                    + "of one figure comes from."
        },
        footer = {
            "",
            "Examples: railwitness findings 0412.session --json",
            "          railwitness findings 0412.session --budget \"load effect\" --rail plus"
        })
final class FindingsCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SESSION", description = "a session file")
    private Path session;

    @Option(names = "--json", description = "Print JSON instead of a sheet.")
    private boolean json;

    @Option(
            names = "--budget",
            paramLabel = "FIGURE",
            description = "Print the uncertainty budget of this figure instead, such as \"load effect\".")
    private String budget;

    @Option(names = "--rail", paramLabel = "RAIL", description = "With --budget, print this rail only.")
    private String rail;

    @Option(
            names = "--notes",
            description = "Also print what each figure means, where it holds, and what its uncertainty comes from.")
    private boolean notes;

    @Option(names = "--whole", description = "Check the chain of a long session too, however long that takes.")
    private boolean whole;

    @Override
    public Integer call() {
        if (budget != null) {
            return budget();
        }
        if (rail != null) {
            throw new BadInput("--rail goes with --budget FIGURE");
        }
        return FindingsPrint.of(
                SessionFindings.of(session, whole), spec.commandLine().getOut(), json, notes);
    }

    private int budget() {
        SessionFindings findings = SessionFindings.of(session, whole);
        findings.chain().refuseBroken(session);
        List<Figure> figures = findings.figures(budget, Optional.ofNullable(rail));
        PrintWriter out = spec.commandLine().getOut();
        out.print(json ? FindingsJson.of(figures) : BudgetText.of(figures));
        out.flush();
        return ExitCode.DONE;
    }
}
