package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.time.RealScheduler;
import railwitness.logger.recording.record.BriefingMaker;
import railwitness.logger.recording.record.ColdResistances;
import railwitness.logger.recording.record.GuardianStart;
import railwitness.logger.recording.record.Interruption;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.Run;
import railwitness.logger.recording.record.RunEnd;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.safety.caution.Acknowledgement;
import railwitness.safety.caution.Briefing;

/** A session on real instruments. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        description = {
            "Runs a session on real instruments: powers, loads, records, switches off.",
            "Read the cautions it prints first. It is no emergency stop: keep a hand disconnect "
                    + "within reach. Ctrl-C switches off; so does closing the terminal, and so does the end of "
                    + "the input once something is asked."
        },
        footer = {
            "",
            "Example: railwitness run --design design.toml --bench bench.toml --plan plan.toml \\",
            "             --out 0412.session --acknowledge \"Your Name\""
        })
final class RunCommand implements Callable<Integer> {
    private static final int WAITING_ENTRIES = 200_000;

    @Spec
    private CommandSpec spec;

    @Mixin
    private SheetOptions sheets;

    @Option(names = "--out", paramLabel = "SESSION", required = true, description = "session file to make")
    private Path out;

    @Option(
            names = "--acknowledge",
            paramLabel = "NAME",
            description = "Who takes responsibility for powering the unit, having read cautions and checklist.")
    private String name;

    @Option(
            names = "--cold",
            paramLabel = "PLACE=OHM",
            description =
                    "Cold resistance of the checklist that was taken; PLACE is input, switch-1, switch-2 or the name of a"
                            + " rail. It is judged against the design sheet and kept in the session. The option may be given"
                            + " once for each place.")
    private Map<String, Double> cold = new LinkedHashMap<>();

    @Mixin
    private TellOptions tell;

    private boolean stopped;

    @Override
    public Integer call() {
        Sheets used = sheets.all();
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
        RealScheduler scheduler = new RealScheduler();
        Progress progress = new Progress(err, true);
        ConsolePerson keyboard = new ConsolePerson(scheduler, err, System.in, ConsolePerson.atTerminal());
        keyboard.rungBy(ConsolePerson::ring);
        LiveSession session = new LiveSession(
                used,
                scheduler,
                SerialLine::open,
                WorkerMaker.threaded(scheduler),
                (writer, trouble) -> Recorder.threaded(writer, WAITING_ENTRIES, trouble),
                keyboard,
                tell.with(progress, out, scheduler::wallNow, err));
        keyboard.whenGone(asked -> nobodyAtTheKeyboard(session, keyboard, asked, err));
        session.guardedBy(GuardianStart::of);
        session.acknowledged(acknowledged);
        Interruption interruption = new Interruption(scheduler, session::running);
        RunEnd end;
        try {
            end = session.run(out, Heads.of(used, start, false, Optional.of(acknowledged.name())));
        } finally {
            interruption.over();
            tell.close();
        }
        progress.ended(end);
        int found = FindingsPrint.of(out, spec.commandLine().getOut(), false);
        return end.offConfirmed() ? found : ExitCode.INSTRUMENT;
    }

    /** Nobody can answer any more: under power, and where something is or will be asked, that is a stop. */
    private void nobodyAtTheKeyboard(LiveSession session, ConsolePerson keyboard, boolean asked, PrintWriter err) {
        boolean mayBeOn = session.running().filter(Run::mayBeOn).isPresent();
        Optional<String> willAsk =
                keyboard.hasAnswers() ? Optional.empty() : session.running().flatMap(Run::asksUnderPower);
        if (asked || mayBeOn) {
            stop(session, "stopped: the input has ended, so nobody can answer at the keyboard");
        } else if (willAsk.isPresent()) {
            stop(
                    session,
                    "stopped before power: the input has ended, so nobody is at the keyboard, and under power this run asks "
                            + willAsk.get() + "; start it at a terminal");
        } else {
            err.println("            nobody is at the keyboard: where this run asks for something, it is stopped");
            err.flush();
        }
    }

    private void stop(LiveSession session, String words) {
        if (!stopped) {
            stopped = true;
            session.running().ifPresent(run -> run.stop(words));
        }
        session.running().ifPresent(Run::nobodyThere);
    }
}
