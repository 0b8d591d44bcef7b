package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.junit.jupiter.api.Test;

class PeerTerminalTest {
    private static Answer echo(String message) {
        return Answer.of("heard " + message, Duration.ZERO);
    }

    @Test
    void clientReachesThePeerAndMayComeBack() throws Exception {
        Terminal.assume();
        try (PeerTerminal far = new PeerTerminal("echo", PeerTerminalTest::echo, "\r\n")) {
            assertThat(exchange(far.device(), "A?\n")).isEqualTo("heard A?\r\n");
            assertThat(exchange(far.device(), "B?\r\n")).isEqualTo("heard B?\r\n");
        }
    }

    private static String exchange(String device, String message) throws Exception {
        try (RandomAccessFile near = new RandomAccessFile(device, "rw")) {
            near.write(message.getBytes(StandardCharsets.US_ASCII));
            byte[] reply = new byte[10];
            near.readFully(reply);
            return new String(reply, StandardCharsets.US_ASCII);
        }
    }
}
