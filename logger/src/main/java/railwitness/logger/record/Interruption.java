package railwitness.logger.record;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import railwitness.drivers.line.SerialPorts;
import railwitness.drivers.time.Agenda;

/**
 * Ctrl-C, and whatever else ends the program early. The bytes of off leave at once; then the run takes its ordinary way
 * to an end (rails watched, loads off, file closed), and the program waits for that. Where the bench is still being
 * opened, the run ends before it begins. Where the run does not come to its end, the supply is told off once more and
 * asked, before its port is closed.
 */
public final class Interruption {
    private static final long LONGEST_SECONDS = 120;
    private static final Duration LAST_ANSWER = Duration.ofSeconds(2);

    private final Supplier<Optional<Run>> run;
    private final Agenda agenda;
    private final CountDownLatch over = new CountDownLatch(1);

    /** @param run empty until there is one */
    public Interruption(Agenda agenda, Supplier<Optional<Run>> run) {
        this.agenda = agenda;
        this.run = run;
        SerialPorts.beforePortsClose("switching off", this::interrupted);
    }

    private void interrupted() {
        if (over.getCount() == 0) {
            return;
        }
        // The person's stop stands in the queue before anything that the off does to errands under way can be taken for
        // a fault of an instrument.
        agenda.post(() -> run.get().ifPresent(running -> running.stop(RunEnd.PERSON, "stopped by hand (Ctrl-C)")));
        run.get().ifPresent(Run::cutOff);
        try {
            if (!over.await(LONGEST_SECONDS, TimeUnit.SECONDS)) {
                lastWord();
            }
        } catch (InterruptedException e) {
            lastWord();
            Thread.currentThread().interrupt();
        }
    }

    private void lastWord() {
        run.get().ifPresent(running -> running.power().lastWord(LAST_ANSWER));
    }

    /** The run is over and its file closed. */
    public void over() {
        over.countDown();
    }
}
