package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class ReplayLineTest {
    private static final Duration SECOND = Duration.ofSeconds(1);

    @Test
    void recordIsReplayedInItsOrder() {
        ReplayLine line = new ReplayLine("port", "# start\n> *IDN?\n< Workshop,M-1,7,1.0\n> *RST\n> READ?\n~\n");
        assertThat(line.ask("*IDN?", SECOND)).isEqualTo("Workshop,M-1,7,1.0");
        line.send("*RST");
        assertThatThrownBy(() -> line.ask("READ?", SECOND)).isInstanceOf(LineException.class);
        assertThat(line.rest()).isEmpty();
    }

    @Test
    void anythingElseThanTheRecordFails() {
        ReplayLine line = new ReplayLine("port", "> *IDN?\n< me\n");
        assertThatThrownBy(() -> line.ask("*RST?", SECOND))
                .hasMessage("port: sent '*RST?', but the record has > *IDN?");
    }
}
