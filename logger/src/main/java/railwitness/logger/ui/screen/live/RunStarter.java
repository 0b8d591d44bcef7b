package railwitness.logger.ui.screen.live;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import railwitness.drivers.converter.Fault;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.RealScheduler;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.record.GuardianStart;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.NewHead;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.safety.caution.Acknowledgement;

/**
 * Starts runs from the screen.
 *
 * @param programVersion kept in every session
 */
public record RunStarter(String programVersion) {
    private static final int WAITING_ENTRIES = 200_000;

    /**
     * A rehearsal on the virtual bench.
     *
     * @param fault what is wrong with the unit
     * @param seed draws the instruments' errors
     * @param pace seconds of the session in one second
     * @param leads what was found at the leads before, a line each
     */
    public LiveRun rehearsal(
            Sheets sheets, Optional<Fault> fault, long seed, double pace, String name, List<String> leads, Path out) {
        Instant start = Instant.now();
        VirtualScheduler scheduler = VirtualScheduler.atPace(start, pace);
        VirtualBench bench =
                FixtureMaker.bench(sheets, fault.map(List::of).orElse(List.of()), seed, scheduler::nowNanos);
        RunFeed feed = new RunFeed(sheets, true, () -> scheduler.nowNanos() / 1e9);
        LiveSession session = new LiveSession(
                sheets,
                scheduler,
                bench.opener(scheduler),
                WorkerMaker.inline(scheduler),
                Recorder::inline,
                new RehearsingHands(new ScreenPerson(feed::ask, feed::forget), bench, pace),
                feed);
        session.leads(leads);
        LiveRun run = new LiveRun(sheets, out, true, scheduler, feed, session);
        run.start(NewHead.of(
                Optional.of(sheets.design().content().unit()), start, true, programVersion, name, "unnamed unit"));
        return run;
    }

    /** A session on real instruments, for which somebody has taken responsibility. */
    public LiveRun onBench(Sheets sheets, Acknowledgement acknowledged, List<String> leads, Path out) {
        Instant start = Instant.now();
        RealScheduler scheduler = new RealScheduler();
        RunFeed feed = new RunFeed(sheets, false, () -> scheduler.nowNanos() / 1e9);
        LiveSession session = new LiveSession(
                sheets,
                scheduler,
                SerialLine::open,
                WorkerMaker.threaded(scheduler),
                (writer, trouble) -> Recorder.threaded(writer, WAITING_ENTRIES, trouble),
                new ScreenPerson(feed::ask, feed::forget),
                feed);
        session.guardedBy(GuardianStart::of);
        session.acknowledged(acknowledged);
        session.leads(leads);
        LiveRun run = new LiveRun(sheets, out, false, scheduler, feed, session);
        run.start(NewHead.of(
                Optional.of(sheets.design().content().unit()),
                start,
                false,
                programVersion,
                acknowledged.name(),
                "unnamed unit"));
        return run;
    }
}
