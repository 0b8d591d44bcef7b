package railwitness.drivers.instrument;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.Block;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Waveform;
import railwitness.drivers.scpi.Dialogue;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.time.VirtualScheduler;

class ScpiScopeTest {
    private static final double STEP_VOLTS = 1e-4;
    private String preamble = "4,2.0E-06,-4.0E-06,1.0E-04,5.0E-03";

    private Answer hear(String message) {
        return switch (message) {
            case "SYST:ERR?" -> Answer.of("0,\"No error\"", Duration.ZERO);
            case "INIT;*OPC?" -> Answer.of("1", Duration.ofMillis(3));
            case "TRAC:PRE? CH2" -> Answer.of(preamble, Duration.ZERO);
            case "TRAC? CH2" -> Answer.of(Block.of(codes(-100, 10, 0, 32767)), Duration.ZERO);
            default -> Answer.silence(Duration.ZERO);
        };
    }

    private static byte[] codes(int... codes) {
        ByteBuffer bytes = ByteBuffer.allocate(2 * codes.length);
        for (int code : codes) {
            bytes.putShort((short) code);
        }
        return bytes.array();
    }

    private ScpiScope scope() {
        VirtualScheduler scheduler = new VirtualScheduler(Instant.EPOCH);
        Dialogue dialogue = new Dialogue(
                "scope",
                new PeerLine("port", this::hear, scheduler),
                scheduler,
                ExchangeLog.none(),
                "SYST:ERR?",
                Duration.ofSeconds(1));
        ScopeSetting setting = new ScopeSetting(Channel.of("plus.ripple"), 0.5, 0.001, 2);
        return new ScpiScope(
                dialogue, Identity.of("W,S,1,1"), Dialects.shipped().named("scpi-1999"), "\n", setting);
    }

    @Test
    void waveformIsScaledByItsPreamble() {
        ScpiScope scope = scope();
        scope.setUp();
        Waveform waveform = scope.waveform();
        assertThat(waveform.channel()).isEqualTo(Channel.of("plus.ripple"));
        assertThat(waveform.stepSeconds()).isEqualTo(2e-6);
        assertThat(waveform.startSeconds()).isEqualTo(-4e-6);
        assertThat(waveform.values())
                .containsExactly(
                        new double[] {-0.01 + 0.005, 0.001 + 0.005, 0.005, 32767 * STEP_VOLTS + 0.005}, within(1e-12));
    }

    @Test
    void shortPreambleIsGarbled() {
        preamble = "4,2.0E-06";
        assertThatThrownBy(() -> scope().waveform()).hasMessageContaining("which is not a preamble of");
    }
}
