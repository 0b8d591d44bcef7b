package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.instrument.RequestOutcome;
import railwitness.drivers.line.LineException;
import railwitness.drivers.time.Scheduler;

/** Asks every station for its readings, round after round, each at its own pace and never two rounds at once. */
final class Polling {
    private final Scheduler scheduler;
    private final Supplier<Duration> interval;
    private final Runnable first;
    private final Consumer<PollResult> swept;
    private final Consumer<LineException> failed;
    private boolean going;

    /**
     * @param interval from one round to the next of the same instrument; a slower one goes as fast as it can
     * @param first done before each question
     * @param failed told when a whole round could not be asked
     */
    Polling(
            Scheduler scheduler,
            Supplier<Duration> interval,
            Runnable first,
            Consumer<PollResult> swept,
            Consumer<LineException> failed) {
        this.scheduler = scheduler;
        this.interval = interval;
        this.first = first;
        this.swept = swept;
        this.failed = failed;
    }

    void start(List<? extends InstrumentWorker<? extends Instrument>> workers) {
        going = true;
        workers.forEach(this::round);
    }

    void stop() {
        going = false;
    }

    private void round(InstrumentWorker<? extends Instrument> worker) {
        if (!going) {
            return;
        }
        first.run();
        long begun = scheduler.nowNanos();
        worker.ask(() -> worker.instrument().poll(), (RequestOutcome<PollResult> outcome) -> {
            if (going) {
                scheduler.at(begun + interval.get().toNanos(), () -> round(worker));
                outcome.either(swept, failed);
            }
        });
    }
}
