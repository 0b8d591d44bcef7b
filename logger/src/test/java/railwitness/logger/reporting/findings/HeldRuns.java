package railwitness.logger.reporting.findings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import railwitness.drivers.converter.Room;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.converter.Surroundings;
import railwitness.drivers.converter.Wear;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.RehearsalPerson;
import railwitness.logger.recording.record.Remainder;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;

/** Holds recorded on the virtual bench with a plan of the test's own. */
final class HeldRuns {
    private static final Instant START = Instant.parse("2026-05-11T08:00:00Z");
    private static final Path SAMPLE = Path.of("..", "sessions-sample", "burn-in");

    static final String POWERED = """
            [plan]
            name = "held"
            settle_at_most_s = 20
            average_s = 20
            answer_at_most_s = 60
            [[stage]]
            kind = "power-up"
            current_limit_A = 5
            """;

    private HeldRuns() {}

    static Sheets sheets(String plan) throws IOException {
        return new Sheets(
                Sheets.design(SAMPLE.resolve("design.toml")),
                Sheets.bench("bench.toml", Files.readString(SAMPLE.resolve("bench.toml"))),
                Sheets.plan("plan.toml", plan));
    }

    static Path run(Path file, Sheets sheets, Surroundings surroundings, RunListener listener) {
        VirtualScheduler scheduler = new VirtualScheduler(START);
        VirtualBench bench = bench(sheets, scheduler, surroundings);
        new LiveSession(
                        sheets,
                        scheduler,
                        bench.opener(scheduler),
                        WorkerMaker.inline(scheduler),
                        Recorder::inline,
                        new RehearsalPerson(scheduler, bench),
                        listener)
                .run(file, new SessionHead("0098", START, ZoneOffset.UTC, true, "test", "", "Horn", "0098", ""));
        return file;
    }

    /** As it runs: what a test may do to it. */
    record Hands(VirtualBench bench, VirtualScheduler scheduler, LiveSession session, Recorder[] recorder) {}

    /**
     * A run in which something happens.
     *
     * @param atSeconds when, on the session's axis
     * @param what on the scheduler's own thread
     */
    static Hands meddled(Path file, Sheets sheets, double atSeconds, java.util.function.Consumer<Hands> what) {
        VirtualScheduler scheduler = new VirtualScheduler(START);
        VirtualBench bench = bench(sheets, scheduler, still());
        Recorder[] recorder = new Recorder[1];
        LiveSession session = new LiveSession(
                sheets,
                scheduler,
                bench.opener(scheduler),
                WorkerMaker.inline(scheduler),
                (writer, trouble) -> recorder[0] = Recorder.inline(writer, trouble),
                new RehearsalPerson(scheduler, bench),
                new RunListener() {});
        Hands hands = new Hands(bench, scheduler, session, recorder);
        scheduler.at(Math.round(atSeconds * 1e9), () -> what.accept(hands));
        session.run(file, new SessionHead("0098", START, ZoneOffset.UTC, true, "test", "", "Horn", "0098", ""));
        return hands;
    }

    static Surroundings still() {
        return new Surroundings(Room.still(22), Wear.NONE);
    }

    static void goOn(Path file, double gapSeconds) {
        Remainder left = Remainder.of(file);
        VirtualScheduler scheduler = new VirtualScheduler(left.lastWall().minusNanos(left.lastNanos()));
        scheduler.spend(Duration.ofNanos(left.lastNanos() + Math.round(gapSeconds * 1e9)));
        VirtualBench bench = bench(left.sheets(), scheduler, still());
        new LiveSession(
                        left.sheets(),
                        scheduler,
                        bench.opener(scheduler),
                        WorkerMaker.inline(scheduler),
                        Recorder::inline,
                        new RehearsalPerson(scheduler, bench),
                        new RunListener() {})
                .goOn(left);
    }

    private static VirtualBench bench(Sheets sheets, VirtualScheduler scheduler, Surroundings surroundings) {
        Specimen unit = FixtureMaker.specimen(sheets);
        return VirtualBench.of(unit, List.of(), sheets.bench().content(), 1, scheduler::nowNanos, surroundings);
    }
}
