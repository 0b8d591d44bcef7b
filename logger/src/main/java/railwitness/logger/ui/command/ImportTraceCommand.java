package railwitness.logger.ui.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.logger.recording.importing.TraceSession;
import railwitness.logger.recording.sheet.Sheets;

/** A scope's picture from elsewhere, as or beside a session. */
@Command(
        name = "import-trace",
        mixinStandardHelpOptions = true,
        description = {
            "Makes a session with a scope's waveform, taken at full load.",
            "The trace is a CSV table of two columns, time in s and volts. With --session the new "
                    + "session holds all that the old one holds, and the trace; the old one is not altered."
        },
        footer = {
            "",
            "Example: railwitness import-trace ripple.csv --rail plus --band-Hz 20e6 --session 0412.session",
            "         --out 0412-traced.session"
        })
final class ImportTraceCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "TRACE", description = "CSV file, UTF-8, decimal points, evenly spaced")
    private Path trace;

    @Option(
            names = "--rail",
            paramLabel = "RAIL",
            description = "rail whose ripple it shows, as the design sheet names it")
    private String rail;

    @Option(names = "--drain", description = "It shows the drain of a switch against ground.")
    private boolean drain;

    @Option(names = "--session", paramLabel = "SESSION", description = "ended session to take over into the new one")
    private Path session;

    @Option(
            names = "--design",
            paramLabel = "FILE",
            description = "design sheet of the unit, where --session is left out")
    private Path design;

    @Option(names = "--band-Hz", paramLabel = "HZ", description = "upper end of its band in Hz, such as 20e6")
    private Double bandHz;

    @Option(
            names = "--gain-pct",
            paramLabel = "PCT",
            description = "Limit of the scope's gain error. Without it the uncertainty is unknown.")
    private Double gainPct;

    @Option(names = "--out", paramLabel = "SESSION", required = true, description = "session file to make")
    private Path out;

    @Override
    public Integer call() throws IOException {
        checkOptions();
        TraceSession taken = new TraceSession(
                trace, Optional.ofNullable(rail), positive("--band-Hz", bandHz), positive("--gain-pct", gainPct));
        if (session == null) {
            var sheet = Optional.ofNullable(design).map(Sheets::design);
            taken.alone(
                    out,
                    Heads.of(
                            sheet.map(known -> known.content().unit()),
                            Instant.now(),
                            false,
                            "",
                            trace.getFileName().toString()),
                    sheet);
        } else {
            taken.beside(session, out, Main.Version.text(), share -> {});
        }
        return FindingsPrint.of(out, spec.commandLine().getOut(), false);
    }

    private void checkOptions() {
        if ((rail == null) == !drain) {
            throw new BadInput("say what the trace shows: either --rail RAIL or --drain");
        }
        if (session != null && design != null) {
            throw new BadInput("--session brings its own design sheet; leave out --design");
        }
        if (!Files.isReadable(trace)) {
            throw new BadInput(trace + ": cannot be read; is the name right, and may you read it?");
        }
    }

    private static OptionalDouble positive(String option, Double value) {
        if (value == null) {
            return OptionalDouble.empty();
        }
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new BadInput(option + " " + value + " must be above zero");
        }
        return OptionalDouble.of(value);
    }
}
