package railwitness.drivers.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.ReplayLine;
import railwitness.drivers.time.RealScheduler;

class ThreadedWorkerTest {
    private final RealScheduler scheduler = new RealScheduler();
    private final ThreadedWorker<Instrument> worker =
            new ThreadedWorker<>(new BareInstrument("meter"), scheduler, new ReplayLine("port", ""));
    private final List<String> log = new ArrayList<>();

    @AfterEach
    void close() {
        worker.close();
    }

    private void note(RequestOutcome<String> outcome) {
        outcome.either(log::add, why -> log.add(why.trouble().toString()));
    }

    @Test
    void errandRunsOnItsOwnThreadAndReportsOnTheAgenda() {
        worker.ask(() -> Thread.currentThread().getName(), this::note);
        scheduler.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("station meter");
    }

    @Test
    void askFirstGoesBeforeWhatWaits() {
        CountDownLatch go = new CountDownLatch(1);
        worker.ask(
                () -> {
                    go.await();
                    return "A";
                },
                this::note);
        worker.ask(() -> "B", this::note);
        worker.askFirst(() -> "C", this::note);
        go.countDown();
        scheduler.runUntil(() -> log.size() == 3);
        assertThat(log.indexOf("C")).isLessThan(log.indexOf("B"));
    }

    @Test
    void faultOfTheLineIsAnOutcome() {
        worker.ask(
                () -> {
                    throw LineException.unplugged("port", "READ?");
                },
                this::note);
        scheduler.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("UNPLUGGED");
    }

    @Test
    void closedStationFailsItsErrands() {
        worker.close();
        worker.ask(() -> "A", this::note);
        scheduler.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("CUT_SHORT");
    }
}
