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
import railwitness.drivers.time.VirtualAgenda;

class InlineStationTest {
    private final VirtualAgenda agenda = new VirtualAgenda(Instant.EPOCH);
    private final PeerLine line = new PeerLine("port", message -> Answer.of(message, Duration.ofMillis(100)), agenda);
    private final InlineStation<Instrument> station = new InlineStation<>(new BareInstrument("meter"), agenda, line);
    private final List<String> log = new ArrayList<>();

    private void ask(String message) {
        station.ask(() -> line.ask(message, Duration.ofSeconds(1)), this::note);
    }

    private void note(Outcome<String> outcome) {
        outcome.either(
                value -> log.add(value + "@" + agenda.nowNanos() / 1_000_000),
                why -> log.add(why.trouble() + "@" + agenda.nowNanos() / 1_000_000));
    }

    @Test
    void outcomeIsDueWhenTheExchangeEnds() {
        ask("A");
        agenda.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("A@100");
    }

    @Test
    void oneExchangeAtATime() {
        ask("A");
        ask("B");
        agenda.runUntil(() -> log.size() == 2);
        assertThat(log).containsExactly("A@100", "B@200");
    }

    @Test
    void askFirstGoesBeforeWhatWaits() {
        ask("A");
        ask("B");
        station.askFirst(() -> line.ask("C", Duration.ofSeconds(1)), this::note);
        agenda.runUntil(() -> log.size() == 3);
        assertThat(log).containsExactly("A@100", "C@200", "B@300");
    }

    @Test
    void stationsDoNotHoldUpEachOther() {
        InlineStation<Instrument> other = new InlineStation<>(new BareInstrument("other"), agenda, line);
        ask("A");
        other.ask(() -> line.ask("X", Duration.ofSeconds(1)), this::note);
        agenda.runUntil(() -> log.size() == 2);
        assertThat(log).containsExactly("A@100", "X@100");
    }

    @Test
    void closedStationFailsItsErrands() {
        station.close();
        ask("A");
        agenda.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("CUT_SHORT@0");
    }

    @Test
    void mistakeOfTheProgramIsThrownOnTheAgenda() {
        station.ask(
                () -> {
                    throw new IllegalArgumentException("mistake");
                },
                outcome -> log.add("never"));
        assertThatThrownBy(() -> agenda.runUntil(() -> false)).hasMessage("mistake");
    }
}
