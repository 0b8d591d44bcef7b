package railwitness.logger.screen.live;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.time.Agenda;
import railwitness.logger.record.Interruption;
import railwitness.logger.record.LiveSession;
import railwitness.logger.record.Run;
import railwitness.logger.record.RunEnd;
import railwitness.logger.screen.paper.Trouble;
import railwitness.logger.sheet.Sheets;
import railwitness.logger.store.SessionHead;
import railwitness.safety.interlock.Watch;
import railwitness.safety.power.PowerState;

/** A session that goes on on its own thread while the screen looks on. Every method may be called from the screen's. */
public final class LiveRun {
    private final Sheets sheets;
    private final Path file;
    private final boolean rehearsal;
    private final Agenda agenda;
    private final RunFeed feed;
    private final LiveSession session;
    private final CountDownLatch over = new CountDownLatch(1);
    private volatile boolean stopWanted;
    private volatile List<Watch> watches = List.of();

    LiveRun(Sheets sheets, Path file, boolean rehearsal, Agenda agenda, RunFeed feed, LiveSession session) {
        this.sheets = sheets;
        this.file = file;
        this.rehearsal = rehearsal;
        this.agenda = agenda;
        this.feed = feed;
        this.session = session;
    }

    void start(SessionHead head) {
        new Thread(() -> carryOut(head), "run").start();
    }

    private void carryOut(SessionHead head) {
        Optional<Interruption> interruption = Optional.empty();
        try {
            interruption = rehearsal ? Optional.empty() : Optional.of(new Interruption(agenda, session::running));
            agenda.post(this::stopIfWanted);
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

    /** Switches off: on a real bench the bytes leave at once, and everything else follows in its order. */
    public void switchOff(String words) {
        stopWanted = true;
        Optional<Run> running = session.running();
        if (running.isPresent() && !rehearsal) {
            running.get().stopNow(words);
        } else {
            agenda.post(() -> session.running().ifPresent(run -> run.stop(RunEnd.PERSON, words)));
        }
    }

    /** Off was asked for before the bench was open. */
    private void stopIfWanted() {
        if (stopWanted) {
            session.running().ifPresent(run -> run.stop(RunEnd.PERSON, "stopped before power"));
        }
    }

    /** A remark, kept with the readings. */
    public void note(String text) {
        agenda.post(() -> session.running().ifPresent(run -> run.note("", text)));
    }

    /** The person did or read what was asked. */
    public void answer(Prompt prompt, String typed) {
        feed.answered(prompt).ifPresent(mine -> agenda.post(() -> mine.answer().accept(typed)));
    }

    public boolean over() {
        return over.getCount() == 0;
    }

    /** Waits until the output is off and the file is closed; not for the event thread. */
    public boolean awaitOver(long seconds) throws InterruptedException {
        return over.await(seconds, TimeUnit.SECONDS);
    }
}
