package railwitness.logger.recording.record;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.rehearsal.StandIn;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.RealScheduler;
import railwitness.drivers.time.Scheduler;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.rehearsal.PortsOnSheet;
import railwitness.logger.recording.sheet.PlanReader;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.StepEntry;

/** A whole short session of the demo's unit, in which something is done at a moment counted in what is told. */
final class StoppedSession implements RunListener {
    static final String PLAN = """
            [plan]
            settle_at_most_s = 0
            average_s = 0.5
            answer_at_most_s = 60
            [[stage]]
            kind = "standby"
            [[stage]]
            kind = "power-up"
            current_limit_A = 5
            [[stage]]
            kind = "no-load"
            [[stage]]
            kind = "load-sweep"
            loads_pct = [50]
            [[stage]]
            kind = "line-sweep"
            load_pct = 50
            inputs_V = [11.0, 14.4]
            drop_out_step_V = 1.0
            """;
    private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");

    final List<String> told = new ArrayList<>();
    private final int at;
    private final Consumer<Run> act;
    LiveSession session;
    VirtualBench far;

    /** @param at told how many things before it acts; never for a negative one */
    StoppedSession(int at, Consumer<Run> act) {
        this.at = at;
        this.act = act;
    }

    private void tell(String words) {
        told.add(words);
        if (told.size() == at) {
            session.running().ifPresent(act);
        }
    }

    @Override
    public void happened(double atSeconds, SessionEvent event) {
        tell(event.what() + ": " + event.words());
    }

    @Override
    public void began(int index, int of, Step step) {
        tell("began " + step.name());
    }

    @Override
    public void averaging(Step step, boolean settled) {
        tell("averaging " + step.name());
    }

    @Override
    public void ended(Step step, StepEntry entry) {
        tell("ended " + step.name());
    }

    /** Gives the person of the session, once there is a bench. */
    interface People {
        Person of(Scheduler scheduler, VirtualBench far);
    }

    RunEnd virtual(Path file, String bench, People people, Consumer<VirtualScheduler> before) {
        VirtualScheduler scheduler = new VirtualScheduler(START);
        Sheets sheets = sheets(bench);
        far = FixtureMaker.bench(sheets, List.of(), 1, scheduler::nowNanos);
        session = new LiveSession(
                sheets,
                scheduler,
                far.opener(scheduler),
                WorkerMaker.inline(scheduler),
                Recorder::inline,
                people.of(scheduler, far),
                this);
        before.accept(scheduler);
        return session.run(file, head());
    }

    RunEnd virtual(Path file) {
        return virtual(file, Sheets.demo().bench().text(), RehearsalPerson::new, scheduler -> {});
    }

    /** Over pseudo-terminals in real time. */
    RunEnd real(Path file) {
        RealScheduler scheduler = new RealScheduler();
        far = FixtureMaker.bench(Sheets.demo(), List.of(), 1, scheduler::nowNanos);
        Map<String, String> devices = new HashMap<>();
        try (StandIn standIn = new StandIn(far, (name, on) -> {})) {
            standIn.places().forEach(place -> devices.put(place.name(), place.device()));
            session = new LiveSession(
                    sheets(PortsOnSheet.changed(Sheets.demo().bench(), devices)),
                    scheduler,
                    SerialLine::open,
                    WorkerMaker.threaded(scheduler),
                    (writer, trouble) -> Recorder.threaded(writer, 200_000, trouble),
                    new RehearsalPerson(scheduler, far),
                    this);
            return session.run(file, head());
        }
    }

    static SessionHead head() {
        return new SessionHead("stop", START, ZoneOffset.UTC, true, "test", "", "unit", "", "");
    }

    static Sheets sheets(String bench) {
        return new Sheets(
                Sheets.demo().design(),
                SheetText.of("bench", Sheet.of("bench.toml", bench), BenchSheet::from),
                SheetText.of("plan", Sheet.of("plan.toml", PLAN), PlanReader::plan));
    }
}
