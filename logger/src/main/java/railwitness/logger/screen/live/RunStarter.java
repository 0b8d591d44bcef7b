package railwitness.logger.screen.live;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import railwitness.drivers.instrument.StationMaker;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.rehearsal.Fault;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.RealAgenda;
import railwitness.drivers.time.VirtualAgenda;
import railwitness.logger.record.GuardianStart;
import railwitness.logger.record.LiveSession;
import railwitness.logger.record.NewHead;
import railwitness.logger.rehearsal.FixtureMaker;
import railwitness.logger.sheet.Sheets;
import railwitness.logger.store.Recorder;
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
     */
    public LiveRun rehearsal(Sheets sheets, Optional<Fault> fault, long seed, double pace, String name, Path out) {
        Instant start = Instant.now();
        VirtualAgenda agenda = VirtualAgenda.atPace(start, pace);
        VirtualBench bench = FixtureMaker.bench(sheets, fault.map(List::of).orElse(List.of()), seed, agenda::nowNanos);
        RunFeed feed = new RunFeed(sheets, true, () -> agenda.nowNanos() / 1e9);
        LiveSession session = new LiveSession(
                sheets,
                agenda,
                bench.opener(agenda),
                StationMaker.inline(agenda),
                Recorder::inline,
                new RehearsingHands(new ScreenPerson(feed::ask, feed::forget), bench, pace),
                feed);
        LiveRun run = new LiveRun(sheets, out, true, agenda, feed, session);
        run.start(NewHead.of(
                Optional.of(sheets.design().content().unit()), start, true, programVersion, name, "unnamed unit"));
        return run;
    }

    /** A session on real instruments, for which somebody has taken responsibility. */
    public LiveRun onBench(Sheets sheets, Acknowledgement acknowledged, Path out) {
        Instant start = Instant.now();
        RealAgenda agenda = new RealAgenda();
        RunFeed feed = new RunFeed(sheets, false, () -> agenda.nowNanos() / 1e9);
        LiveSession session = new LiveSession(
                sheets,
                agenda,
                SerialLine::open,
                StationMaker.threaded(agenda),
                (writer, trouble) -> Recorder.threaded(writer, WAITING_ENTRIES, trouble),
                new ScreenPerson(feed::ask, feed::forget),
                feed);
        session.guardedBy(GuardianStart::of);
        session.acknowledged(acknowledged);
        LiveRun run = new LiveRun(sheets, out, false, agenda, feed, session);
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
