package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.drivers.reading.Measured;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;

/** Follows a session that another process records. */
@Command(
        name = "watch",
        mixinStandardHelpOptions = true,
        description = {
            "Follows a running session from another terminal.",
            "Prints what happened so far, then what happens and the last readings, until the session ends. "
                    + "It only reads, and holds nothing up. Ctrl-C ends the watching, not the session."
        },
        footer = {"", "Example: railwitness watch 0412.session --every 10"})
final class WatchCommand implements Callable<Integer> {
    private static final int SHOWN = 10;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SESSION", description = "session file that is being recorded")
    private Path session;

    @Option(
            names = "--every",
            paramLabel = "SECONDS",
            description = "How often readings are printed (default: ${DEFAULT-VALUE}).",
            defaultValue = "5")
    private double every;

    @Option(names = "--once", description = "Print how it stands now, and end.")
    private boolean once;

    @Override
    public Integer call() throws InterruptedException {
        if (!(every >= 0.2 && every <= 86_400)) {
            throw new BadInput("--every " + every + " must be 0.2 to 86400 s");
        }
        PrintWriter out = spec.commandLine().getOut();
        int told = -1;
        while (true) {
            SessionState state;
            try (SessionFile file = SessionFile.open(session)) {
                state = file.state();
                List<EventEntry> events = file.events();
                int from = told < 0 ? Math.max(0, events.size() - SHOWN) : told;
                events.subList(Math.min(from, events.size()), events.size()).forEach(event -> out.println(line(event)));
                told = events.size();
                out.println(readings(file));
            }
            if (state != SessionState.RUNNING || once) {
                out.println("the session is " + state.word());
                out.flush();
                return state == SessionState.TRIPPED ? ExitCode.NOT_FIT : ExitCode.DONE;
            }
            out.flush();
            Thread.sleep(Math.round(every * 1000));
        }
    }

    private static String line(EventEntry event) {
        return String.format(Locale.ROOT, "%8.1f s  %s: %s", event.nanos() / 1e9, event.what(), event.text());
    }

    private static String readings(SessionFile file) {
        return String.format(Locale.ROOT, "%8.1f s  ", file.lastNanos() / 1e9)
                + file.lastValues().entrySet().stream()
                        .filter(entry -> entry.getValue() instanceof Measured)
                        .map(entry -> entry.getKey() + " "
                                + String.format(Locale.ROOT, "%.5g", ((Measured) entry.getValue()).value()) + " "
                                + entry.getKey().quantity().unit())
                        .collect(Collectors.joining(", "));
    }
}
