package railwitness.logger.campaign;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.drivers.winding.Coil;
import railwitness.drivers.winding.WoundFault;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.RehearsalPerson;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.rehearsal.CoilMaker;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.reporting.findings.SessionFindings;

/** One rehearsal of a transformer plan: a sister of the sample's toroid, with or without a fault. */
public final class WoundCase {
    private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");
    private static final Path SAMPLE = Path.of("../sessions-sample/toroid");

    private final Coil sound;
    private final long seed;
    private final Sheets sheets;

    private WoundCase(Sheets sheets, long seed) {
        this.sheets = sheets;
        this.seed = seed;
        this.sound = CoilMaker.sister(CoilMaker.of(sheets.wound()), seed);
    }

    /** @param plan of the sample's folder */
    public static WoundCase of(String plan, long seed) {
        return new WoundCase(
                new Sheets(
                        Sheets.design(SAMPLE.resolve("design.toml")),
                        Sheets.bench(SAMPLE.resolve("bench.toml")),
                        Sheets.plan(SAMPLE.resolve(plan))),
                seed);
    }

    /** The plan without what comes after its first stage. */
    public static WoundCase alone(long seed) {
        Sheets whole = of("plan.toml", seed).sheets;
        String text = whole.plan().text();
        int second = text.indexOf("[[stage]]", text.indexOf("[[stage]]") + 1);
        return new WoundCase(
                new Sheets(whole.design(), whole.bench(), Sheets.plan("plan.toml", text.substring(0, second))), seed);
    }

    public Coil sound() {
        return sound;
    }

    /** A fault of that kind, its place and size drawn from what this seed gives. */
    public String drawn(WoundFault fault) {
        Random random = new Random(7001 * seed + fault.ordinal());
        String place = random.nextBoolean() ? "primary" : "secondary";
        double value =
                switch (fault) {
                    case REVERSED_HALF -> 1;
                    case SHORTED_TURN -> Math.pow(10, -3 + 1.7 * random.nextDouble());
                    case MISMATCHED_HALVES, WRONG_TURNS -> random.nextBoolean() ? 1 : -1;
                    case WEAK_CORE -> 2.8 + 3 * random.nextDouble();
                    case GAP -> 2.2 + 12 * random.nextDouble();
                    case THIN_WIRE -> 1.5 + random.nextDouble();
                    case POOR_JOINT -> 1.25 + 1.2 * random.nextDouble();
                };
        return fault.code() + "@" + place + "=" + value;
    }

    /** Rehearses it with the fault that is written; empty for a sound one. */
    public SessionFindings rehearsed(Optional<String> fault, Path file) {
        return rehearsed(fault, file, "T-17");
    }

    /** The same of a transformer with a serial number of its own. */
    SessionFindings rehearsed(Optional<String> fault, Path file, String serial) {
        Coil coil = fault.map(text -> WoundFault.applied(text, sound)).orElse(sound);
        VirtualScheduler scheduler = new VirtualScheduler(START);
        VirtualBench bench =
                FixtureMaker.bench(sheets, FixtureMaker.specimen(sheets), List.of(), coil, seed, scheduler::nowNanos);
        new LiveSession(
                        sheets,
                        scheduler,
                        bench.opener(scheduler),
                        WorkerMaker.inline(scheduler),
                        Recorder::inline,
                        new RehearsalPerson(scheduler, bench),
                        new RunListener() {})
                .run(
                        file,
                        new SessionHead(
                                "wound " + serial,
                                START,
                                ZoneOffset.UTC,
                                true,
                                "test",
                                "",
                                "Foredeck amplifier supply",
                                serial,
                                "new"));
        return SessionFindings.of(file);
    }

    /** The code of the first fault that was named; empty where none was. */
    public static Optional<String> named(SessionFindings found) {
        return found.wound().orElseThrow().suspicions().stream()
                .map(one -> one.fault().code())
                .findFirst();
    }
}
