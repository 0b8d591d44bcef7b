package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.time.VirtualScheduler;

class PeerLineTest {
    private static final Duration SECOND = Duration.ofSeconds(1);
    private final VirtualScheduler scheduler = new VirtualScheduler(Instant.EPOCH);
    private final List<String> heard = new ArrayList<>();
    private Answer answer = Answer.silence(Duration.ZERO);
    private final PeerLine line = new PeerLine(
            "meter",
            message -> {
                heard.add(message);
                return answer;
            },
            scheduler);

    @Test
    void exchangeTakesItsTime() {
        answer = Answer.of("+1.25E+01", Duration.ofMillis(40));
        assertThat(line.ask("READ?", SECOND)).isEqualTo("+1.25E+01");
        assertThat(scheduler.nowNanos()).isEqualTo(40_000_000L);
    }

    @Test
    void silenceEndsAtTheDeadlineInVirtualTime() {
        assertThatThrownBy(() -> line.ask("READ?", SECOND))
                .isInstanceOfSatisfying(
                        LineException.class, e -> assertThat(e.trouble()).isEqualTo(Trouble.NO_ANSWER))
                .hasMessageContaining("meter: no answer to 'READ?' within 1.00 s");
        assertThat(scheduler.nowNanos()).isEqualTo(SECOND.toNanos());
    }

    @Test
    void lateAnswerIsNoAnswerAndNeverTheNextOne() {
        answer = Answer.of("late", Duration.ofSeconds(2));
        assertThatThrownBy(() -> line.ask("A?", SECOND)).isInstanceOf(LineException.class);
        answer = Answer.of("own", Duration.ofMillis(1));
        assertThat(line.ask("B?", SECOND)).isEqualTo("own");
    }

    @Test
    void cutInHandsOverEachMessageAtOnce() {
        assertThat(line.cutIn("\nINST:NSEL 1\r\nOUTP OFF\n".getBytes(StandardCharsets.US_ASCII)))
                .isTrue();
        assertThat(heard).containsExactly("INST:NSEL 1", "OUTP OFF");
        assertThat(scheduler.nowNanos()).isZero();
    }

    @Test
    void blockLosesItsHeader() {
        answer = Answer.of(Block.of(new byte[] {1, 10, 13}), Duration.ZERO);
        assertThat(line.askBlock("TRAC?", SECOND)).containsExactly(1, 10, 13);
    }

    @Test
    void textInThePlaceOfABlockIsGarbled() {
        answer = Answer.of("12.5", Duration.ZERO);
        assertThatThrownBy(() -> line.askBlock("TRAC?", SECOND)).hasMessageContaining("which is not a block");
    }
}
