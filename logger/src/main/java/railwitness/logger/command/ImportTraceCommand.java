package railwitness.logger.command;

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
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Rail;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Waveform;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.importing.SessionCopy;
import railwitness.logger.importing.TraceImport;
import railwitness.logger.importing.TraceNote;
import railwitness.logger.sheet.DesignReader;
import railwitness.logger.sheet.Sheets;
import railwitness.logger.store.SessionFile;
import railwitness.logger.store.SessionHead;
import railwitness.logger.store.SessionState;
import railwitness.logger.store.SessionWriter;

/** A scope's picture from elsewhere, as or beside a session. */
@Command(
        name = "import-trace",
        mixinStandardHelpOptions = true,
        description = {
            "Takes a waveform, a CSV table of two columns (time in s, volts), taken at full load, into a new session.",
            "With --session the new one holds all that the old one holds, and the trace; the old one is not altered."
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

    @Option(names = "--rail", paramLabel = "RAIL", description = "whose ripple it shows, as the design sheet names it")
    private String rail;

    @Option(names = "--drain", description = "it shows the drain of a switch against ground")
    private boolean drain;

    @Option(names = "--session", paramLabel = "SESSION", description = "finished session to take over into the new one")
    private Path session;

    @Option(names = "--design", paramLabel = "FILE", description = "without --session: design sheet of the unit")
    private Path design;

    @Option(names = "--band-Hz", paramLabel = "HZ", description = "upper end of the band it was taken in, such as 20e6")
    private Double bandHz;

    @Option(
            names = "--gain-pct",
            paramLabel = "PCT",
            description = "limit of the scope's gain error; without it the uncertainty is unknown")
    private Double gainPct;

    @Option(names = "--out", paramLabel = "SESSION", required = true, description = "session file to make")
    private Path out;

    @Override
    public Integer call() throws IOException {
        checkOptions();
        Channel channel = drain ? new Channel("drain", Quantity.VOLTAGE) : new Channel(railName(), Quantity.RIPPLE);
        Waveform waveform = TraceImport.of(trace, channel);
        TraceNote note = new TraceNote(
                channel,
                trace.getFileName().toString(),
                positive("--band-Hz", bandHz),
                positive("--gain-pct", gainPct));
        if (session == null) {
            alone(waveform, note);
        } else {
            beside(waveform, note);
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

    private String railName() {
        new Channel(rail, Quantity.RIPPLE);
        return rail;
    }

    private static OptionalDouble positive(String option, Double value) {
        if (value == null) {
            return OptionalDouble.empty();
        }
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new BadInput(option + " " + value + " must be above nought");
        }
        return OptionalDouble.of(value);
    }

    private void alone(Waveform waveform, TraceNote note) throws IOException {
        var sheet = Optional.ofNullable(design).map(Sheets::design);
        sheet.ifPresent(known -> checkRail(known.content()));
        SessionHead head = Heads.of(sheet.map(known -> known.content().unit()), Instant.now(), false, "", note.from());
        write(head, SessionState.COMPLETE, writer -> {
            sheet.ifPresent(known -> writer.sheet(known.kind(), known.fileName(), known.text()));
            add(writer, 0, waveform, note);
        });
    }

    private void beside(Waveform waveform, TraceNote note) throws IOException {
        try (SessionFile old = SessionFile.open(session)) {
            if (!old.state().isEnding()) {
                throw new BadInput(session + ": is " + old.state().word() + "; a trace is added to a finished session");
            }
            old.sheet("design")
                    .map(sheet -> Sheet.of(sheet.fileName(), sheet.text()).read(DesignReader::design))
                    .ifPresent(this::checkRail);
            SessionHead head = old.head();
            SessionHead copy = new SessionHead(
                    head.id() + "-traced",
                    head.startedWall(),
                    head.zone(),
                    head.rehearsal(),
                    Main.Version.text(),
                    head.acknowledgedBy(),
                    head.unitName(),
                    head.unitSerial(),
                    head.unitCondition());
            write(copy, old.state(), writer -> {
                SessionCopy.of(old, writer);
                long last = old.lastNanos();
                writer.event(last, "copy", "taken over from session " + head.id() + ", seal " + old.seal());
                add(writer, last, waveform, note);
            });
        }
    }

    private void checkRail(Design known) {
        if (!drain && known.rails().stream().noneMatch(one -> one.name().equals(rail))) {
            throw new BadInput("the design sheet has no rail '" + rail + "'; its rails are "
                    + String.join(", ", known.rails().stream().map(Rail::name).toList()));
        }
    }

    private static void add(SessionWriter writer, long nanos, Waveform waveform, TraceNote note) {
        writer.add(note.at(nanos));
        writer.waveform(nanos, waveform);
    }

    private void write(SessionHead head, SessionState state, java.util.function.Consumer<SessionWriter> content)
            throws IOException {
        SessionWriter writer = SessionWriter.create(out, head);
        try {
            content.accept(writer);
            writer.finish(state);
        } catch (RuntimeException e) {
            writer.close();
            Files.deleteIfExists(out);
            throw e;
        }
    }
}
