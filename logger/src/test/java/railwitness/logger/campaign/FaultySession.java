package railwitness.logger.campaign;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.rehearsal.StandIn;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.RealScheduler;
import railwitness.drivers.time.Scheduler;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.record.GuardianStart;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.RehearsalPerson;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.reporting.findings.SessionFindings;

/** A whole session, from sheets to closed file, in which one thing goes wrong. */
final class FaultySession {
    private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");
    private static final Duration LONGEST_VIRTUAL = Duration.ofMinutes(30);
    /** Longer than a run waits for an instrument to be put back. */
    private static final Duration LONGEST_REAL = Duration.ofMinutes(14);

    private static final int WAITING_ENTRIES = 200_000;
    private static final long GUARDIAN_MILLIS = 4000;

    private FaultySession() {}

    /** On the virtual clock, in this thread. */
    static CaseEnding virtual(FaultCase what) {
        VirtualScheduler scheduler = new VirtualScheduler(START);
        Sheets sheets = CampaignSheets.onVirtualClock(what.sparse());
        VirtualBench far = FixtureMaker.bench(sheets, List.of(), what.seed(), scheduler::nowNanos);
        CaseListener heard = new CaseListener(what, far, sheets.bench().content(), scheduler);
        LiveSession session = new LiveSession(
                sheets,
                scheduler,
                far.opener(scheduler),
                WorkerMaker.inline(scheduler),
                Recorder::inline,
                new RehearsalPerson(scheduler, far),
                heard);
        return ending(what, far, heard, session, scheduler, LONGEST_VIRTUAL);
    }

    /** Over pseudo-terminals in real time, with a guardian. */
    static CaseEnding real(FaultCase what) {
        RealScheduler scheduler = new RealScheduler();
        Sheets sheets = CampaignSheets.onVirtualClock(what.sparse());
        VirtualBench far = FixtureMaker.bench(sheets, List.of(), what.ownBench(), scheduler::nowNanos);
        Map<String, String> devices = new HashMap<>();
        try (StandIn standIn = new StandIn(far, (name, on) -> {})) {
            standIn.places().forEach(place -> devices.put(place.name(), place.device()));
            CaseListener heard = new CaseListener(what, far, sheets.bench().content(), scheduler);
            LiveSession session = new LiveSession(
                    CampaignSheets.onDevices(devices, what.sparse()),
                    scheduler,
                    SerialLine::open,
                    WorkerMaker.threaded(scheduler),
                    (writer, trouble) -> Recorder.threaded(writer, WAITING_ENTRIES, trouble),
                    new RehearsalPerson(scheduler, far),
                    heard);
            session.guardedBy(GuardianStart::of);
            return ending(what, far, heard, session, scheduler, LONGEST_REAL);
        }
    }

    /** What is measured where nothing goes wrong. */
    static List<OperatingPoint> healthy(long seed, boolean sparse) {
        VirtualScheduler scheduler = new VirtualScheduler(START);
        Sheets sheets = CampaignSheets.onVirtualClock(sparse);
        VirtualBench far = FixtureMaker.bench(sheets, List.of(), seed, scheduler::nowNanos);
        LiveSession session = new LiveSession(
                sheets,
                scheduler,
                far.opener(scheduler),
                WorkerMaker.inline(scheduler),
                Recorder::inline,
                new RehearsalPerson(scheduler, far),
                new RunListener() {});
        Path file = fresh();
        session.run(file, new SessionHead("campaign", START, ZoneOffset.UTC, true, "test", "", "unit", "", ""));
        List<OperatingPoint> points = SessionFindings.of(file).findings().points();
        delete(file);
        return points;
    }

    private static CaseEnding ending(
            FaultCase what,
            VirtualBench far,
            CaseListener heard,
            LiveSession session,
            Scheduler scheduler,
            Duration longest) {
        Path file = fresh();
        what.beforeOpening(far);
        scheduler.after(longest, () -> {
            throw new IllegalStateException("the session does not end");
        });
        String escaped = "";
        try {
            session.run(file, new SessionHead("campaign", START, ZoneOffset.UTC, true, "test", "", "unit", "", ""));
        } catch (RuntimeException e) {
            escaped = e.toString();
        }
        boolean off = isOff(far, scheduler);
        CaseEnding ending = CaseEnding.of(what, file, off, heard);
        delete(file);
        return escaped.contains("does not end") || escaped.contains("nothing is left") ? ending.with(escaped) : ending;
    }

    /** What the guardian does after an end that was not confirmed takes a moment. */
    private static boolean isOff(VirtualBench far, Scheduler scheduler) {
        long until = System.nanoTime() + GUARDIAN_MILLIS * 1_000_000;
        while (scheduler instanceof RealScheduler && far.supply("supply").isOn() && System.nanoTime() < until) {
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return false;
            }
        }
        return !far.supply("supply").isOn();
    }

    private static Path fresh() {
        try {
            return Files.createTempDirectory("campaign").resolve("case.session");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void delete(Path file) {
        try (var all = Files.list(file.getParent())) {
            for (Path each : all.toList()) {
                Files.delete(each);
            }
            Files.delete(file.getParent());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
