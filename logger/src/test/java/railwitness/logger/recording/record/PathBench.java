package railwitness.logger.recording.record;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.safety.interlock.Phase;
import railwitness.safety.power.Power;
import railwitness.safety.power.PowerLog;
import railwitness.safety.power.Result;

/** A {@link PowerPath} on the demo's bench, polled as in a run, without the run around it. */
final class PathBench implements PowerLog, AutoCloseable {
    final VirtualScheduler scheduler = new VirtualScheduler(Instant.parse("2026-11-25T10:00:00Z"));
    final List<Phase> phases = new ArrayList<>();
    final List<String> told = new ArrayList<>();
    final VirtualBench far;
    final Bench bench;
    final Power power;
    final RunSetup setup;
    final PowerPath path;
    boolean permitted = true;
    Consumer<String> when = what -> {};
    Consumer<PollResult> swept = result -> {};

    PathBench(Function<PathBench, Person> people) {
        this(Sheets.demo().bench().text(), people);
    }

    /** @param text of the bench sheet */
    PathBench(String text, Function<PathBench, Person> people) {
        Sheets sheets = StoppedSession.sheets(text);
        far = FixtureMaker.bench(sheets, List.of(), 1, scheduler::nowNanos);
        bench = Bench.open(
                sheets.bench().content(),
                far.opener(scheduler),
                scheduler,
                WorkerMaker.inline(scheduler),
                ExchangeLog.none());
        setup = new RunSetup(
                scheduler, bench, sheets.design().content(), sheets.plan().content());
        power = new Power(scheduler, bench.supply(), setup.loads(), setup.rails(), () -> permitted, this);
        path = new PowerPath(setup, power, people.apply(this), phases::add, event -> told.add(event.what()));
        Polling polling = new Polling(
                scheduler,
                () -> Duration.ofMillis(250),
                () -> {},
                result -> {
                    result.readings().forEach(reading -> {
                        power.heard(reading);
                        path.heard(reading);
                    });
                    if (result.instrument().equals(bench.supply().name())) {
                        path.state(result.conditions());
                    }
                    swept.accept(result);
                },
                why -> {});
        polling.start(bench.workers());
    }

    static Person rehearsal(PathBench own) {
        return new RehearsalPerson(own.scheduler, own.far);
    }

    interface Asked {
        void of(Consumer<Result> then);
    }

    /** What came of it, null where nothing does within that time. */
    Result within(Duration longest, Asked asked) {
        Result[] result = new Result[1];
        boolean[] late = {false};
        scheduler.after(longest, () -> late[0] = true);
        asked.of(found -> result[0] = found);
        scheduler.runUntil(() -> result[0] != null || late[0]);
        return result[0];
    }

    Result up() {
        return within(Duration.ofMinutes(2), then -> path.powerUp(way -> way.accept(new Result.Done("none")), then));
    }

    void pass(Duration time) {
        boolean[] over = {false};
        scheduler.after(time, () -> over[0] = true);
        scheduler.runUntil(() -> over[0]);
    }

    boolean on() {
        return far.supply("supply").isOn();
    }

    @Override
    public void step(long atNanos, String what, String words) {
        told.add(what);
        when.accept(what);
    }

    @Override
    public void alarm(long atNanos, String words) {
        told.add("alarm");
    }

    @Override
    public void alarmOver(long atNanos, String words) {
        told.add("alarm over");
    }

    @Override
    public void close() {
        bench.close();
    }
}
