package railwitness.drivers.instrument;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.time.VirtualScheduler;

class InlineWorkerTest {
    private final VirtualScheduler scheduler = new VirtualScheduler(Instant.EPOCH);
    private final PeerLine line =
            new PeerLine("port", message -> Answer.of(message, Duration.ofMillis(100)), scheduler);
    private final InlineWorker<Instrument> worker = new InlineWorker<>(new BareInstrument("meter"), scheduler, line);
    private final List<String> log = new ArrayList<>();

    private void ask(String message) {
        worker.ask(() -> line.ask(message, Duration.ofSeconds(1)), this::note);
    }

    private void note(RequestOutcome<String> outcome) {
        outcome.either(
                value -> log.add(value + "@" + scheduler.nowNanos() / 1_000_000),
                why -> log.add(why.trouble() + "@" + scheduler.nowNanos() / 1_000_000));
    }

    @Test
    void outcomeIsDueWhenTheExchangeEnds() {
        ask("A");
        scheduler.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("A@100");
    }

    @Test
    void oneExchangeAtATime() {
        ask("A");
        ask("B");
        scheduler.runUntil(() -> log.size() == 2);
        assertThat(log).containsExactly("A@100", "B@200");
    }

    @Test
    void askFirstGoesBeforeWhatWaits() {
        ask("A");
        ask("B");
        worker.askFirst(() -> line.ask("C", Duration.ofSeconds(1)), this::note);
        scheduler.runUntil(() -> log.size() == 3);
        assertThat(log).containsExactly("A@100", "C@200", "B@300");
    }

    @Test
    void stationsDoNotHoldUpEachOther() {
        InlineWorker<Instrument> other = new InlineWorker<>(new BareInstrument("other"), scheduler, line);
        ask("A");
        other.ask(() -> line.ask("X", Duration.ofSeconds(1)), this::note);
        scheduler.runUntil(() -> log.size() == 2);
        assertThat(log).containsExactly("A@100", "X@100");
    }

    @Test
    void closedStationFailsItsErrands() {
        worker.close();
        ask("A");
        scheduler.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("CUT_SHORT@0");
    }

    @Test
    void mistakeOfTheProgramIsThrownOnTheAgenda() {
        worker.ask(
                () -> {
                    throw new IllegalArgumentException("mistake");
                },
                outcome -> log.add("never"));
        assertThatThrownBy(() -> scheduler.runUntil(() -> false)).hasMessage("mistake");
    }
}
