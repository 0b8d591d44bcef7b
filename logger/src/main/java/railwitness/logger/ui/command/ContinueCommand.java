package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.RealScheduler;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.record.BriefingMaker;
import railwitness.logger.recording.record.ColdResistances;
import railwitness.logger.recording.record.GuardianStart;
import railwitness.logger.recording.record.Interruption;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.RehearsalPerson;
import railwitness.logger.recording.record.Remainder;
import railwitness.logger.recording.record.RunEnd;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.rehearsal.SisterUnit;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.safety.caution.Acknowledgement;
import railwitness.safety.caution.Briefing;

/** Goes on with an interrupted session in its own file. */
@Command(
        name = "continue",
        mixinStandardHelpOptions = true,
        description = {
            "Goes on with an interrupted session, in its own file.",
            "The gap is recorded. Cautions and checks come again, and so does first power; then what is left of the plan is "
                    + "done, a hold for as long as it was not held. Only a session that was interrupted can be gone on with."
        },
        footer = {"", "Example: railwitness continue 0412.session --acknowledge \"Your Name\""})
final class ContinueCommand implements Callable<Integer> {
    private static final int WAITING_ENTRIES = 200_000;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SESSION", description = "session file that was interrupted")
    private Path session;

    @Option(
            names = "--acknowledge",
            paramLabel = "NAME",
            description = "Who takes responsibility for powering the unit again, having read cautions and checklist.")
    private String name;

    @Option(
            names = "--cold",
            paramLabel = "PLACE=OHM",
            description = "Cold resistance of the checklist that was taken again, as for run.")
    private Map<String, Double> cold = new LinkedHashMap<>();

    @Option(
            names = "--sister",
            paramLabel = "N",
            description = "Unit of a rehearsal, as it was given when the session began.")
    private Long sister;

    @Option(
            names = "--after",
            paramLabel = "SECONDS",
            description = "Length of the gap of a rehearsal (default: ${DEFAULT-VALUE}).",
            defaultValue = "600")
    private double after;

    @Mixin
    private FaultOptions faults;

    @Mixin
    private WearOptions wear;

    @Mixin
    private TellOptions tell;

    @Override
    public Integer call() {
        Remainder left = Remainder.of(session);
        return left.rehearsal() ? rehearse(left) : run(left);
    }

    private int rehearse(Remainder left) {
        if (!(after >= 1 && after <= 30 * 86_400)) {
            throw new BadInput("--after " + after + " must be 1 s to 30 days");
        }
        long now = left.lastNanos() + Math.round(after * 1e9);
        VirtualScheduler scheduler = new VirtualScheduler(left.lastWall().minusNanos(left.lastNanos()));
        scheduler.spend(Duration.ofNanos(now));
        Sheets used = left.sheets();
        Specimen sound = FixtureMaker.specimen(used);
        VirtualBench bench = VirtualBench.of(
                wear.joined(sister == null ? sound : SisterUnit.of(sound, sister)),
                faults.faults(),
                used.bench().content(),
                faults.seed(),
                scheduler::nowNanos,
                wear.surroundings(used.bench().content().ambientDegC()));
        Progress progress = new Progress(spec.commandLine().getErr(), false);
        LiveSession live = new LiveSession(
                used,
                scheduler,
                bench.opener(scheduler),
                WorkerMaker.inline(scheduler),
                Recorder::inline,
                new RehearsalPerson(scheduler, bench),
                tell.with(
                        progress,
                        session,
                        scheduler::wallNow,
                        spec.commandLine().getErr()));
        try {
            progress.ended(live.goOn(left));
        } finally {
            tell.close();
        }
        return FindingsPrint.of(session, spec.commandLine().getOut(), false);
    }

    private int run(Remainder left) {
        Sheets used = left.sheets();
        PrintWriter err = spec.commandLine().getErr();
        Gate.pass(used, err);
        Briefing briefing = BriefingMaker.of(used);
        BriefingPrint.print(briefing, err);
        if (name == null || name.isBlank()) {
            throw new BadInput("no power: --acknowledge NAME is missing; read the cautions above, do what the checklist"
                    + " says, then name who takes responsibility");
        }
        Instant start = Instant.now();
        Acknowledgement acknowledged =
                briefing.acknowledge(name, start, ColdResistances.answers(briefing.checklist(), cold));
        RealScheduler scheduler = new RealScheduler(left.nanosAt(start));
        Progress progress = new Progress(err, true);
        ConsolePerson keyboard = new ConsolePerson(scheduler, err, System.in, ConsolePerson.atTerminal());
        keyboard.rungBy(ConsolePerson::ring);
        LiveSession live = new LiveSession(
                used,
                scheduler,
                SerialLine::open,
                WorkerMaker.threaded(scheduler),
                (writer, trouble) -> Recorder.threaded(writer, WAITING_ENTRIES, trouble),
                keyboard,
                tell.with(progress, session, scheduler::wallNow, err));
        keyboard.whenGone(asked -> live.running().filter(going -> asked).ifPresent(going -> {
            going.stop("stopped: the input has ended, so nobody can answer at the keyboard");
            going.nobodyThere();
        }));
        live.guardedBy(GuardianStart::of);
        live.acknowledged(acknowledged);
        Interruption interruption = new Interruption(scheduler, live::running);
        RunEnd end;
        try {
            end = live.goOn(left);
        } finally {
            interruption.over();
            tell.close();
        }
        progress.ended(end);
        int found = FindingsPrint.of(session, spec.commandLine().getOut(), false);
        return end.offConfirmed() ? found : ExitCode.INSTRUMENT;
    }
}
