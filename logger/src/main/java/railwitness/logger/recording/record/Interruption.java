package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import railwitness.drivers.line.SerialPorts;
import railwitness.drivers.time.Scheduler;
import railwitness.safety.power.PowerState;

/**
 * Ctrl-C, a closed terminal, and whatever else ends the program early: one stop, each kept under its own name. The bytes
 * of off leave at once; then the run takes its ordinary way to an end (rails watched, loads off, file closed), and the
 * program waits for that, as long as the supply has not said that it is off. Where the bench is still being opened, the
 * run ends before it begins. Where the run no longer goes on, the supply is told off and asked until it says so.
 */
public final class Interruption {
    private static final long LONGEST_SECONDS = 120;
    private static final long LOOK_MILLIS = 100;
    private static final Duration LAST_ANSWER = Duration.ofSeconds(2);
    private static final Duration STOOD_STILL = Duration.ofSeconds(10);

    private final Supplier<Optional<Run>> run;
    private final Scheduler scheduler;
    private final CountDownLatch over = new CountDownLatch(1);
    private final Set<EndSignal> told = new HashSet<>();

    /** @param run empty until there is one */
    public Interruption(Scheduler scheduler, Supplier<Optional<Run>> run) {
        this.scheduler = scheduler;
        this.run = run;
        SerialPorts.beforePortsClose("switching off", this::interrupted);
    }

    private void interrupted() {
        if (over.getCount() == 0) {
            return;
        }
        Set<EndSignal> signals = EndSignal.raised();
        if (signals.isEmpty()) {
            stop("stopped: the program ends");
        }
        try {
            long begun = System.nanoTime();
            do {
                EndSignal.raised().stream().filter(told::add).forEach(signal -> stop(signal.words()));
            } while (!over.await(LOOK_MILLIS, TimeUnit.MILLISECONDS) && worthWaiting(begun));
        } catch (InterruptedException e) {
            lastWord();
            Thread.currentThread().interrupt();
        }
    }

    private void stop(String words) {
        Optional<Run> running = run.get();
        if (running.isPresent()) {
            running.get().stopNow(words);
        } else {
            scheduler.post(() -> run.get().ifPresent(mine -> mine.stop(words)));
        }
    }

    /** A run that goes on is waited for; one that stands still, or the rails of a supply that is off, not for ever. */
    private boolean worthWaiting(long begunNanos) {
        boolean late = System.nanoTime() - begunNanos > TimeUnit.SECONDS.toNanos(LONGEST_SECONDS);
        Optional<Run> running = run.get();
        if (running.isEmpty()) {
            return !late;
        }
        if (!running.get().awake(STOOD_STILL)) {
            return !lastWord();
        }
        PowerState state = running.get().power().state();
        boolean off = state == PowerState.DISCHARGING || state == PowerState.OFF;
        return !(late && off && lastWord());
    }

    private boolean lastWord() {
        return run.get().map(running -> running.power().lastWord(LAST_ANSWER)).orElse(true);
    }

    /** The run is over and its file closed. */
    public void over() {
        over.countDown();
    }
}
