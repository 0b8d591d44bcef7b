package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.LineException.Trouble;

/** The same laws over a plain socket, and what is of the network alone. */
class SocketLineTest extends LineTest {
    @Override
    Far far(Peer peer, String terminator) {
        return new PeerSocket(peer, terminator);
    }

    @Test
    void withoutAPortItIsTheOneRegisteredForScpi() {
        // IANA service names and port numbers: scpi-raw, 5025/tcp
        assertThat(SocketAddress.of("tcp://meter.bench.example"))
                .isEqualTo(new SocketAddress("meter.bench.example", 5025));
        assertThat(SocketAddress.of("tcp://192.0.2.7:5555/")).isEqualTo(new SocketAddress("192.0.2.7", 5555));
    }

    @Test
    void anAddressThatIsNoneShowsHowOneIsWritten() {
        for (String wrong :
                List.of("tcp://", "tcp://:5025", "tcp://a b", "tcp://host:0", "tcp://host:70000", "tcp://h/x")) {
            LineException e = trouble(() -> SerialLine.open(PortSettings.usual(wrong)));
            assertThat(e.trouble()).as(wrong).isEqualTo(Trouble.NO_SUCH_PORT);
            assertThat(e).hasMessage(wrong + ": not an address; write it like tcp://192.168.1.20:5025");
        }
    }

    @Test
    void nobodyThereIsSaid() throws IOException {
        int free;
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            free = taken.getLocalPort();
        }
        LineException e = trouble(() -> SerialLine.open(PortSettings.usual("tcp://127.0.0.1:" + free)));
        assertThat(e).hasMessageContaining("refuses the connection");
    }

    @Test
    void aHostWithoutANumberIsSaid() {
        LineException e = trouble(() -> SerialLine.open(PortSettings.usual("tcp://no-such-host.invalid")));
        assertThat(e).hasMessageContaining("no such host");
    }

    @Test
    void aConnectionThatEndsIsAPortThatHasGone() {
        assertThat(line.ask("READ?", SECOND)).isEqualTo("re READ?");
        far.close();
        assertThat(trouble(() -> line.ask("READ?", SECOND)).trouble()).isEqualTo(Trouble.UNPLUGGED);
        assertThat(line.cutIn(new byte[] {'\n'})).isFalse();
    }
}
