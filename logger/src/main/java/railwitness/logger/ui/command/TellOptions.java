package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import picocli.CommandLine.Option;
import railwitness.logger.recording.record.Listeners;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.record.StatusFile;
import railwitness.logger.recording.record.Teller;

/** Who is told how a run stands, apart from the console. */
final class TellOptions {
    private static final Duration OFTEN = Duration.ofSeconds(5);

    @Option(
            names = "--tell",
            paramLabel = "PROGRAM",
            description =
                    "Program of yours that is run on a trip, an alarm, steadiness, a key that is due, and the end. What happened"
                            + " and the last readings are in its environment, RAILWITNESS_KIND first; it may take 20 s.")
    private Path program;

    @Option(
            names = "--status",
            paramLabel = "FILE",
            description = "File of JSON that says how the run stands, written anew every 5 s.")
    private Path status;

    private Optional<Teller> teller = Optional.empty();

    /** The console and whoever else is to be told. */
    RunListener with(RunListener console, Path session, Supplier<Instant> clock, PrintWriter err) {
        List<RunListener> all = new ArrayList<>(List.of(console));
        if (program != null) {
            if (!Files.isExecutable(program)) {
                throw new BadInput(
                        "--tell " + program + " is no program that can be run: give its path, and make it executable");
            }
            teller = Optional.of(new Teller(program, session, Teller.LONGEST, words -> say(err, words)));
            all.add(teller.get());
        }
        if (status != null) {
            all.add(new StatusFile(status, session, OFTEN, clock, words -> say(err, words)));
        }
        return new Listeners(all);
    }

    /** What is still to be told is told. */
    void close() {
        teller.ifPresent(Teller::close);
    }

    private static void say(PrintWriter err, String words) {
        err.println("            " + words);
        err.flush();
    }
}
