package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.Meter;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.PeerTerminal;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.RealScheduler;

/** An adapter that is pulled out and comes back, as a link by which the system names it shows it. */
@Timeout(30)
class ReplugTest {
    private final RealScheduler scheduler = new RealScheduler();

    @TempDir
    private Path folder;

    private Path link() {
        return folder.resolve("by-id-meter");
    }

    private void plug(PeerTerminal far) throws IOException {
        Files.deleteIfExists(link());
        Files.createSymbolicLink(link(), Path.of(far.device()));
    }

    private static PeerTerminal meter(String serial, String shows) {
        return new PeerTerminal(
                "meter", new ScriptedPeer("Workshop,M-1," + serial + ",1.0").answers("READ?", shows), "\n");
    }

    private Bench bench() {
        String toml = """
                [bench]
                name = "wharf"
                source = "battery"
                [[instrument]]
                name = "plus meter"
                kind = "meter"
                port = "%s"
                reads = "plus.voltage"
                answer_within_s = 0.2
                """.formatted(link());
        return Bench.open(
                Sheet.of("bench.toml", toml).read(BenchSheet::from),
                SerialLine::open,
                scheduler,
                WorkerMaker.threaded(scheduler),
                ExchangeLog.none());
    }

    private PollResult poll(Bench bench) {
        InstrumentWorker<Meter> worker = bench.meters().get(0);
        List<PollResult> polled = new ArrayList<>();
        worker.ask(
                worker.instrument()::poll,
                outcome -> outcome.either(polled::add, why -> {
                    throw why;
                }));
        scheduler.runUntil(() -> !polled.isEmpty());
        return polled.get(0);
    }

    private PollResult pollUntil(Bench bench, Class<?> reading) throws InterruptedException {
        PollResult found = poll(bench);
        for (int i = 0; i < 40 && !reading.isInstance(found.readings().get(0)); i++) {
            TimeUnit.MILLISECONDS.sleep(100);
            found = poll(bench);
        }
        return found;
    }

    @Test
    void theSameMeterIsReadOnWithinTwoSecondsOfComingBack() throws IOException, InterruptedException {
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        PeerTerminal first = meter("7", "+3.65E+01");
        plug(first);
        try (Bench bench = bench()) {
            assertThat(((Measured) poll(bench).readings().get(0)).value()).isEqualTo(36.5);
            first.close();
            Missing missing =
                    (Missing) pollUntil(bench, Missing.class).readings().get(0);
            assertThat(missing.isUnplugged()).isTrue();
            try (PeerTerminal again = meter("7", "+3.70E+01")) {
                plug(again);
                long begun = System.nanoTime();
                PollResult back = pollUntil(bench, Measured.class);
                double seconds = (System.nanoTime() - begun) / 1e9;
                System.out.printf("found again after %.2f s%n", seconds);
                assertThat(((Measured) back.readings().get(0)).value()).isEqualTo(37.0);
                assertThat(seconds).isLessThan(2);
            }
        }
    }

    @Test
    void anotherMeterInItsPlaceIsNotRead() throws IOException, InterruptedException {
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        PeerTerminal first = meter("7", "+3.65E+01");
        plug(first);
        try (Bench bench = bench()) {
            poll(bench);
            first.close();
            pollUntil(bench, Missing.class);
            try (PeerTerminal other = meter("8", "+1.20E+01")) {
                plug(other);
                for (int i = 0; i < 5; i++) {
                    assertThat(poll(bench).readings().get(0)).isInstanceOf(Missing.class);
                }
                try (SerialLine free = SerialLine.open(PortSettings.usual(other.device()))) {
                    assertThat(free.ask("*IDN?", Duration.ofSeconds(1))).contains(",8,"); // nobody holds its port
                }
            }
            try (PeerTerminal again = meter("7", "+3.70E+01")) {
                plug(again);
                assertThat(((Measured) pollUntil(bench, Measured.class)
                                        .readings()
                                        .get(0))
                                .value())
                        .isEqualTo(37.0);
            }
        }
    }
}
