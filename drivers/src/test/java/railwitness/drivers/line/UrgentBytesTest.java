package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class UrgentBytesTest {
    private static final byte[] OFF = "\nOUTP OFF\n".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] LOAD_OFF = "\nINP OFF\n".getBytes(StandardCharsets.US_ASCII);

    private final ReentrantLock writing = new ReentrantLock();
    private final List<byte[]> written = new CopyOnWriteArrayList<>();
    private final UrgentBytes urgent = new UrgentBytes("test", writing, written::add);

    private void until(int count) throws InterruptedException {
        while (written.size() < count) {
            TimeUnit.MILLISECONDS.sleep(1);
        }
    }

    @Test
    void theyLeaveByThemselves() throws InterruptedException {
        urgent.add(OFF);
        until(1);
        assertThat(written).containsExactly(OFF);
    }

    @Test
    void whoeverWritesNextWritesThemFirst() {
        writing.lock();
        try {
            urgent.add(OFF);
            urgent.add(LOAD_OFF);
            urgent.flush();
            written.add("VOLT 12\n".getBytes(StandardCharsets.US_ASCII));
        } finally {
            writing.unlock();
        }
        assertThat(written).extracting(String::new).containsExactly("\nOUTP OFF\n", "\nINP OFF\n", "VOLT 12\n");
    }

    @Test
    void theSameBytesWaitOnlyOnceWhereNothingIsTaken() throws InterruptedException {
        writing.lock();
        try {
            for (int i = 0; i < 1000; i++) {
                urgent.add(OFF);
            }
        } finally {
            writing.unlock();
        }
        until(1);
        TimeUnit.MILLISECONDS.sleep(50);
        assertThat(written).hasSize(1);
    }

    /** A port that takes nothing more: whoever cuts in does not wait, and off leaves as soon as it takes again. */
    @Test
    void cuttingInNeverWaitsForAPortThatTakesNothing() throws InterruptedException {
        assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        try (PseudoTerminal far = new PseudoTerminal()) {
            SerialLine line =
                    SerialLine.open(new PortSettings(far.device(), 115_200, 8, PortSettings.Parity.NONE, 1, "\n"));
            Thread writer = new Thread(() -> {
                try {
                    line.send("x".repeat(300_000));
                } catch (LineException gone) {
                    // the terminal is closed at the end
                }
            });
            writer.setDaemon(true);
            writer.start();
            TimeUnit.MILLISECONDS.sleep(500);
            assertThat(writer.isAlive()).isTrue();
            long worst = 0;
            for (int i = 0; i < 50; i++) {
                long before = System.nanoTime();
                assertThat(line.cutIn(OFF)).isTrue();
                worst = Math.max(worst, System.nanoTime() - before);
            }
            System.out.println("longest cut in: " + worst / 1000 + " us");
            assertThat(worst).isLessThan(100_000_000L);
            StringBuilder heard = new StringBuilder();
            while (!heard.toString().contains("\nOUTP OFF\n")) {
                heard.append(new String(far.read(Duration.ofMillis(100)), StandardCharsets.ISO_8859_1));
            }
            assertThat(heard.indexOf("OUTP OFF")).isEqualTo(heard.lastIndexOf("OUTP OFF"));
            line.close();
        }
    }
}
