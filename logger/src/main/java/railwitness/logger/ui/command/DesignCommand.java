package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.analysis.transformer.DesignReport;
import railwitness.analysis.transformer.ProposalReport;
import railwitness.analysis.transformer.WoundDesign;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.reporting.designing.DesignJson;
import railwitness.logger.reporting.designing.DesignText;
import railwitness.logger.reporting.designing.ProposalText;

/** What a transformer comes to before it is wound. */
@Command(
        name = "design",
        mixinStandardHelpOptions = true,
        description = {
            "Works out the transformer of a design sheet before it is wound.",
            "Flux density, inductance, wire, resistance, fill, losses, temperature and rails, each with its limit, formula"
                    + " and source, and the number that limits.",
            "What the sheet does not say is named with what that costs; docs/toroid.md leads through it."
        },
        footer = {"", "Example: railwitness design toroid.toml --propose"})
final class DesignCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "DESIGN", description = "Design sheet (TOML) with [core] and [winding].")
    private Path file;

    @Option(names = "--json", description = "print JSON instead of text")
    private boolean json;

    @Option(names = "--propose", description = "List the turns that fit this core and usual ring cores instead.")
    private boolean propose;

    @Override
    public Integer call() {
        WoundDesign wound = Sheets.wound(file).content();
        PrintWriter out = spec.commandLine().getOut();
        try {
            out.print(propose ? proposed(ProposalReport.of(wound)) : worked(DesignReport.of(wound)));
        } catch (IllegalArgumentException e) {
            throw new BadInput(file.getFileName() + ": " + e.getMessage());
        }
        out.flush();
        return ExitCode.DONE;
    }

    private String worked(DesignReport report) {
        return json ? DesignJson.of(report) : DesignText.of(report);
    }

    private String proposed(ProposalReport report) {
        return json ? DesignJson.of(report) : ProposalText.of(report);
    }
}
