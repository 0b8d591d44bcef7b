package railwitness.drivers.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.ReplayLine;
import railwitness.drivers.time.RealAgenda;

class ThreadedStationTest {
    private final RealAgenda agenda = new RealAgenda();
    private final ThreadedStation<Instrument> station =
            new ThreadedStation<>(new BareInstrument("meter"), agenda, new ReplayLine("port", ""));
    private final List<String> log = new ArrayList<>();

    @AfterEach
    void close() {
        station.close();
    }

    private void note(Outcome<String> outcome) {
        outcome.either(log::add, why -> log.add(why.trouble().toString()));
    }

    @Test
    void errandRunsOnItsOwnThreadAndReportsOnTheAgenda() {
        station.ask(() -> Thread.currentThread().getName(), this::note);
        agenda.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("station meter");
    }

    @Test
    void askFirstGoesBeforeWhatWaits() {
        CountDownLatch go = new CountDownLatch(1);
        station.ask(
                () -> {
                    go.await();
                    return "A";
                },
                this::note);
        station.ask(() -> "B", this::note);
        station.askFirst(() -> "C", this::note);
        go.countDown();
        agenda.runUntil(() -> log.size() == 3);
        assertThat(log.indexOf("C")).isLessThan(log.indexOf("B"));
    }

    @Test
    void faultOfTheLineIsAnOutcome() {
        station.ask(
                () -> {
                    throw LineException.unplugged("port", "READ?");
                },
                this::note);
        agenda.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("UNPLUGGED");
    }

    @Test
    void closedStationFailsItsErrands() {
        station.close();
        station.ask(() -> "A", this::note);
        agenda.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("CUT_SHORT");
    }
}
