package railwitness.drivers.scpi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.line.ReplayLine;
import railwitness.drivers.time.VirtualScheduler;

class DialogueTest {
    private final List<Exchange> log = new ArrayList<>();

    private Dialogue dialogue(String record) {
        return new Dialogue(
                "supply",
                new ReplayLine("port-1", record),
                new VirtualScheduler(Instant.EPOCH),
                log::add,
                "SYST:ERR?",
                Duration.ofSeconds(1));
    }

    @Test
    void errorQueueIsEmptiedAfterASetting() {
        dialogue("> VOLT 12\n> SYST:ERR?\n< 0,\"No error\"").set("VOLT 12");
        assertThat(log).extracting(Exchange::sent).containsExactly("VOLT 12", "SYST:ERR?");
    }

    @Test
    void refusedSettingNamesInstrumentPortAndEveryEntry() {
        Dialogue dialogue = dialogue("""
                > VOLT 99
                > SYST:ERR?
                < -222,"Data out of range;VOLT 99"
                > SYST:ERR?
                < -350,"Queue overflow"
                > SYST:ERR?
                < +0,"No error"
                """);
        assertThatThrownBy(() -> dialogue.set("VOLT 99"))
                .isInstanceOfSatisfying(
                        LineException.class, e -> assertThat(e.trouble()).isEqualTo(Trouble.REFUSED))
                .hasMessageStartingWith("supply on port-1: 'VOLT 99' was refused: "
                        + "-222 Data out of range (VOLT 99); -350 Queue overflow;");
    }

    @Test
    void queueThatNeverEndsIsGarbled() {
        Dialogue dialogue = dialogue("> X\n" + "> SYST:ERR?\n< -100,\"Command error\"\n".repeat(64));
        assertThatThrownBy(() -> dialogue.set("X")).hasMessageContaining("the end of the error queue");
    }

    @Test
    void silenceIsLoggedWithItsReason() {
        Dialogue dialogue = dialogue("> READ?\n~");
        assertThatThrownBy(() -> dialogue.poll("READ?", Duration.ofSeconds(1)))
                .hasMessageStartingWith("supply on port-1: no answer to 'READ?' within 1.00 s");
        assertThat(log).hasSize(1);
        assertThat(log.get(0).trouble()).contains("no answer");
        assertThat(log.get(0).polling()).isTrue();
    }

    @Test
    void overloadIsNoSetting() {
        assertThatThrownBy(() -> dialogue("> VOLT?\n< 9.9E37").askNumber("VOLT?"))
                .hasMessageContaining("which is not a number");
    }
}
