package railwitness.logger.ui.command;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.drivers.winding.Coil;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.RehearsalPerson;
import railwitness.logger.recording.record.RunEnd;
import railwitness.logger.recording.rehearsal.CoilMaker;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.rehearsal.SisterUnit;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;

/** A session on the virtual bench. */
@Command(
        name = "rehearse",
        mixinStandardHelpOptions = true,
        description = {
            "Runs a session on the virtual bench; no real instrument is touched.",
            "The unit is worked out from the design sheet and stands behind virtual instruments. "
                    + "Without sheets the demo is run."
        },
        footer = {
            "",
            "Example: railwitness rehearse --fault shorted-turn --out shorted.session",
            "Example: railwitness rehearse --design design.toml --bench bench.toml --plan plan.toml --pace real"
        })
final class RehearseCommand implements Callable<Integer> {
    private static final DateTimeFormatter DATED =
            DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmmss", Locale.ROOT).withZone(ZoneId.systemDefault());

    @Spec
    private CommandSpec spec;

    @Mixin
    private SheetOptions sheets;

    @Mixin
    private FaultOptions faults;

    @Mixin
    private WearOptions wear;

    @Mixin
    private TellOptions tell;

    @Option(
            names = "--pace",
            paramLabel = "fast|real",
            description = "How fast time goes: fast (default) on a virtual clock, real as on a bench.")
    private Pace pace = Pace.fast;

    @Option(
            names = "--out",
            paramLabel = "SESSION",
            description = "session file to make (default: a dated one in this folder)")
    private Path out;

    /** How fast the clock of a rehearsal goes. */
    enum Pace {
        fast,
        real
    }

    @Option(
            names = "--sister",
            paramLabel = "N",
            description =
                    "Take one of many units of the design, its parts drawn from around those of the sheet. The same N gives"
                            + " the same unit.")
    private Long sister;

    private Specimen unit(Sheets used) {
        Specimen sound = FixtureMaker.specimen(used);
        return sister == null ? sound : SisterUnit.of(sound, sister);
    }

    private VirtualBench bench(Sheets used, VirtualScheduler scheduler) {
        if (used.plan().content().transformer().isEmpty()) {
            return VirtualBench.of(
                    wear.joined(unit(used)),
                    faults.faults(),
                    used.bench().content(),
                    faults.seed(),
                    scheduler::nowNanos,
                    wear.surroundings(used.bench().content().ambientDegC()));
        }
        Coil meant = CoilMaker.of(used.wound());
        Coil sound = sister == null ? meant : CoilMaker.sister(meant, sister);
        return FixtureMaker.bench(
                used, unit(used), faults.ofUnit(), faults.in(sound), faults.seed(), scheduler::nowNanos);
    }

    @Override
    public Integer call() {
        Sheets used = sheets.orDemo();
        Gate.pass(used, spec.commandLine().getErr());
        Instant start = Instant.now();
        Path file = out == null ? Path.of("rehearsal-" + DATED.format(start) + ".session") : out;
        VirtualScheduler scheduler =
                pace == Pace.real ? VirtualScheduler.atRealPace(start) : new VirtualScheduler(start);
        VirtualBench bench = bench(used, scheduler);
        Progress progress = new Progress(spec.commandLine().getErr(), pace == Pace.real);
        LiveSession session = new LiveSession(
                used,
                scheduler,
                bench.opener(scheduler),
                WorkerMaker.inline(scheduler),
                Recorder::inline,
                new RehearsalPerson(scheduler, bench),
                tell.with(progress, file, scheduler::wallNow, spec.commandLine().getErr()));
        RunEnd end;
        try {
            end = session.run(file, Heads.of(used, start, true, Optional.empty()));
        } finally {
            tell.close();
        }
        progress.ended(end);
        return FindingsPrint.of(file, spec.commandLine().getOut(), false);
    }
}
