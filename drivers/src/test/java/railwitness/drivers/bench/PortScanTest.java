package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.time.VirtualScheduler;

class PortScanTest {
    private static final Duration PATIENCE = Duration.ofMillis(300);

    /** A meter at 115200 baud, a silent port, one that is in use. */
    private static Line open(PortSettings settings) {
        if (settings.port().equals("busy")) {
            throw new LineException(Trouble.IN_USE, "busy: the port is in use", "", "");
        }
        boolean answers = settings.port().equals("meter") && settings.baud() == 115200;
        return new PeerLine(
                settings.port(),
                message -> answers ? Answer.of("Workshop,M-1-CH,7,1.0", Duration.ZERO) : Answer.silence(Duration.ZERO),
                new VirtualScheduler(Instant.EPOCH));
    }

    @Test
    void everyPortIsReportedWithWhatItSaid() {
        List<PortScan.Found> found =
                new PortScan(PortScanTest::open, PATIENCE).scan(List.of("silent", "meter", "busy"));
        assertThat(found).extracting(PortScan.Found::port).containsExactly("silent", "meter", "busy");
        assertThat(found.get(0).settings()).isEmpty();
        assertThat(found.get(1).settings().orElseThrow().baud()).isEqualTo(115200);
        assertThat(found.get(1).identity()).isEqualTo("Workshop,M-1-CH,7,1.0");
        assertThat(found.get(1).dialect()).isEqualTo("channels");
        assertThat(found.get(2).trouble()).isEqualTo("busy: the port is in use");
    }
}
