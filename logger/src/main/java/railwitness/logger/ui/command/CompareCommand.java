package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.logger.recording.store.ChainState;
import railwitness.logger.reporting.certificate.Paper;
import railwitness.logger.reporting.comparing.Comparison;
import railwitness.logger.reporting.comparing.ComparisonJson;
import railwitness.logger.reporting.comparing.ComparisonPdf;
import railwitness.logger.reporting.comparing.ComparisonText;

/** Sessions side by side. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description = {
            "Holds sessions against the first, figure by figure and step by step.",
            "It prints each difference with its uncertainty (what the same instruments bring to both "
                    + "cancels) and says whether it is a real change. From eight sessions on, all of one model, "
                    + "it says which unit is unlike its sisters."
        },
        footer = {"", "Example: railwitness compare 0412-found.session 0412-left.session --out 0412-repair.pdf"})
final class CompareCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "SESSION",
            arity = "2..*",
            description = "session files; the others are held against the first")
    private List<Path> sessions;

    @Option(names = "--json", description = "Print JSON instead of text.")
    private boolean json;

    @Option(names = "--out", paramLabel = "PDF", description = "Make this PDF too, with the curves over each other.")
    private Path out;

    @Option(names = "--paper", paramLabel = "a4|letter", description = "sheet to print on (default a4)")
    private CertificateCommand.Sheet paper = CertificateCommand.Sheet.a4;

    @Option(names = "--workshop", paramLabel = "TEXT", description = "who compared, with address")
    private String workshop;

    @Option(names = "--whole", description = "Check the chain of a long session too, however long that takes.")
    private boolean whole;

    @Override
    public Integer call() {
        if (whole) {
            sessions.forEach(session -> ChainState.of(session, true).refuseBroken(session));
        }
        Comparison comparison = Comparison.of(sessions);
        if (out != null) {
            ComparisonPdf.write(
                    comparison,
                    out,
                    new ComparisonPdf.Wish(
                            paper == CertificateCommand.Sheet.a4 ? Paper.A4 : Paper.LETTER,
                            Instant.now().truncatedTo(ChronoUnit.MILLIS),
                            Optional.ofNullable(workshop)));
        }
        if (!whole) {
            notWorkedOut(comparison);
        }
        PrintWriter text = spec.commandLine().getOut();
        text.print(json ? ComparisonJson.of(comparison) : ComparisonText.of(comparison));
        text.flush();
        return ExitCode.DONE;
    }

    private void notWorkedOut(Comparison comparison) {
        comparison.sessions().stream()
                .filter(session -> !session.chain().isKnown())
                .forEach(session -> spec.commandLine()
                        .getErr()
                        .println(session.head().id() + ": " + session.chain().words() + " (--whole works it out)"));
    }
}
