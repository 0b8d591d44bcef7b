package railwitness.logger.ui.screen.live;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.time.Scheduler;
import railwitness.logger.recording.record.Interruption;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.Run;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.ui.screen.widgets.Trouble;
import railwitness.safety.interlock.Watch;
import railwitness.safety.power.PowerState;

/** A session that goes on on its own thread while the screen looks on. Every method may be called from the screen's. */
public final class LiveRun {
    private final Sheets sheets;
    private final Path file;
    private final boolean rehearsal;
    private final Scheduler scheduler;
    private final RunFeed feed;
    private final LiveSession session;
    private final CountDownLatch over = new CountDownLatch(1);
    private final List<Double> notes = new CopyOnWriteArrayList<>();
    private volatile boolean stopWanted;
    private volatile List<Watch> watches = List.of();

    LiveRun(Sheets sheets, Path file, boolean rehearsal, Scheduler scheduler, RunFeed feed, LiveSession session) {
        this.sheets = sheets;
        this.file = file;
        this.rehearsal = rehearsal;
        this.scheduler = scheduler;
        this.feed = feed;
        this.session = session;
    }

    void start(SessionHead head) {
        new Thread(() -> carryOut(head), "run").start();
    }

    private void carryOut(SessionHead head) {
        Optional<Interruption> interruption = Optional.empty();
        try {
            interruption = rehearsal ? Optional.empty() : Optional.of(new Interruption(scheduler, session::running));
            scheduler.post(this::stopIfWanted);
            feed.ended(session.run(file, head));
        } catch (RuntimeException | Error e) {
            feed.failed(Trouble.words(e));
        } finally {
            over.countDown();
            interruption.ifPresent(Interruption::over);
        }
    }

    public Sheets sheets() {
        return sheets;
    }

    /** Where the session is kept. */
    public Path file() {
        return file;
    }

    public boolean rehearsal() {
        return rehearsal;
    }

    /** A snapshot, at once. */
    public RunView view() {
        return feed.view(session.running().map(run -> run.power().state()).orElse(PowerState.NOT_KNOWN));
    }

    public Optional<TraceKeeper> trace(Channel channel) {
        return feed.trace(channel);
    }

    /** What is watched, once the bench is open; it stays so for the whole run. */
    public List<Watch> watches() {
        if (watches.isEmpty()) {
            watches = session.running().map(Run::watches).orElse(List.of());
        }
        return watches;
    }

    /** When remarks were written, s of the session. */
    public List<Double> notes() {
        return List.copyOf(notes);
    }

    /** Switches off: on a real bench the bytes leave at once, and everything else follows in its order. */
    public void switchOff(String words) {
        stopWanted = true;
        Optional<Run> running = session.running();
        if (running.isPresent() && !rehearsal) {
            running.get().stopNow(words);
        } else {
            scheduler.post(() -> session.running().ifPresent(run -> run.stop(words)));
        }
    }

    /** Off was asked for before the bench was open. */
    private void stopIfWanted() {
        if (stopWanted) {
            session.running().ifPresent(run -> run.stop("stopped before power"));
        }
    }

    /** Ends the hold under way before its time; the plan goes on. */
    public void endHold() {
        scheduler.post(() -> session.running().ifPresent(Run::endHold));
    }

    /** A remark, kept with the readings. */
    public void note(String text) {
        notes.add(scheduler.nowNanos() / 1e9);
        scheduler.post(() -> session.running().ifPresent(run -> run.note("", text)));
    }

    /** The output goes off here, and the plan goes on once the person says so. */
    public void pause() {
        scheduler.post(() -> session.running().ifPresent(Run::pause));
    }

    /** The step under way is taken once more. */
    public void repeatStep() {
        scheduler.post(() -> session.running().ifPresent(Run::repeatStep));
    }

    /** The person did or read what was asked. */
    public void answer(Prompt prompt, String typed) {
        feed.answered(prompt)
                .ifPresent(mine -> scheduler.post(() -> mine.answer().accept(typed)));
    }

    public boolean over() {
        return over.getCount() == 0;
    }

    /** Waits until the output is off and the file is closed; not for the event thread. */
    public boolean awaitOver(long seconds) throws InterruptedException {
        return over.await(seconds, TimeUnit.SECONDS);
    }
}
