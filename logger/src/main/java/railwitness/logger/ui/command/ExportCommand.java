package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.logger.recording.store.ChainState;
import railwitness.logger.reporting.exporting.DialogueFiles;
import railwitness.logger.reporting.exporting.SessionExport;

/** A session for other programs. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        description = {
            "Writes a session into a folder as CSV, JSON and the sheets as they were.",
            "The tables are readings, points, figures, steps, events, exchanges and waveforms; "
                    + "findings are JSON. The import command takes readings.csv back."
        },
        footer = {"", "Example: railwitness export 0412.session --out 0412"})
final class ExportCommand implements Callable<Integer> {
    private static final long FIRST_WORD_NANOS = 1_000_000_000L;
    private static final long NEXT_WORD_NANOS = 2_000_000_000L;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SESSION", description = "a session file that has ended")
    private Path session;

    @Option(names = "--out", paramLabel = "DIR", required = true, description = "folder to make")
    private Path out;

    @Option(names = "--whole", description = "Check the chain of a long session too, however long that takes.")
    private boolean whole;

    @Option(
            names = "--dialogues",
            description = "Write only what was said with the instruments, without makers and serial numbers.")
    private boolean dialogues;

    @Override
    public Integer call() {
        if (dialogues) {
            int written = DialogueFiles.write(session, out);
            spec.commandLine().getOut().println(out + ": dialogues of " + written + " instruments");
            return ExitCode.DONE;
        }
        ChainState chain = ChainState.of(session, whole);
        SessionExport export = new SessionExport(session, out, chain);
        Thread onInterruption = new Thread(export::stop, "clearing away a half export");
        Runtime.getRuntime().addShutdownHook(onInterruption);
        PrintWriter err = spec.commandLine().getErr();
        long[] next = {System.nanoTime() + FIRST_WORD_NANOS};
        long readings = export.write((share, done) -> {
            if (System.nanoTime() - next[0] >= 0) {
                next[0] = System.nanoTime() + NEXT_WORD_NANOS;
                err.println(String.format(Locale.ROOT, "%3.0f %%, %d readings", 100 * share, done));
                err.flush();
            }
        });
        if (chain.isBroken() || !chain.isKnown()) {
            spec.commandLine()
                    .getErr()
                    .println(session + ": " + chain.words()
                            + (chain.isBroken() ? "; it is exported as it stands" : " (--whole works it out)"));
        }
        spec.commandLine().getOut().println(out + ": " + readings + " readings");
        return chain.isBroken() ? ExitCode.STORE : ExitCode.DONE;
    }
}
