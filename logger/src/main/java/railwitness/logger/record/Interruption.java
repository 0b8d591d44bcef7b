package railwitness.logger.record;

import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import railwitness.drivers.line.SerialPorts;
import railwitness.drivers.time.Agenda;

/**
 * Ctrl-C, and whatever else ends the program early. The bytes of off leave at once; then the run takes its ordinary way
 * to an end (rails watched, loads off, file closed), and the program waits for that.
 */
public final class Interruption {
    private static final long LONGEST_SECONDS = 120;

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
        Optional<Run> running = run.get();
        if (running.isEmpty() || over.getCount() == 0) {
            return;
        }
        running.get().cutOff();
        agenda.post(() -> running.get().stop(RunEnd.PERSON, "stopped by hand (Ctrl-C)"));
        try {
            if (!over.await(LONGEST_SECONDS, TimeUnit.SECONDS)) {
                running.get().cutOff();
            }
        } catch (InterruptedException e) {
            running.get().cutOff();
            Thread.currentThread().interrupt();
        }
    }

    /** The run is over and its file closed. */
    public void over() {
        over.countDown();
    }
}
