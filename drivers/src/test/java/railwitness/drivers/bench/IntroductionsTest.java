package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.RealScheduler;
import railwitness.drivers.time.VirtualScheduler;

/** Slow instruments on ports of their own are introduced at the same time. */
@Timeout(60)
class IntroductionsTest {
    private static final int METERS = 6;
    private static final long SLOW_MILLIS = 4000;

    private final List<String> told = new CopyOnWriteArrayList<>();
    private final AtomicInteger open = new AtomicInteger();

    /** Says who it is after so long, everything else at once. */
    private Line slow(String port, boolean there) {
        VirtualScheduler clock = new VirtualScheduler(java.time.Instant.EPOCH);
        ScriptedPeer meter = new ScriptedPeer("Workshop,M-" + port + ",7,1.0").answers("READ?", "+1.0E+00");
        Line line = new PeerLine(
                port,
                message -> {
                    if (message.startsWith("*IDN?")) {
                        pause();
                        return there ? meter.hear(message) : Answer.silence(Duration.ZERO);
                    }
                    return meter.hear(message);
                },
                clock);
        open.incrementAndGet();
        return new CountedLine(line, open::decrementAndGet);
    }

    private static void pause() {
        try {
            TimeUnit.MILLISECONDS.sleep(SLOW_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private Bench opened(LineOpener opener) {
        RealScheduler scheduler = new RealScheduler();
        StringBuilder sheet = new StringBuilder("[bench]\nname = \"lock\"\nsource = \"battery\"\n");
        for (int i = 0; i < METERS; i++) {
            sheet.append("[[instrument]]\nname = \"meter %d\"\nkind = \"meter\"\nport = \"%d\"\n".formatted(i, i))
                    .append("reads = \"rail%d.voltage\"\n".formatted(i));
        }
        return Bench.open(
                Sheet.of("bench.toml", sheet.toString()).read(BenchSheet::from),
                opener,
                scheduler,
                WorkerMaker.threaded(scheduler),
                ExchangeLog.none(),
                told::add);
    }

    @Test
    void theyTakeNoLongerThanTheSlowestOfThemAndSayWhatTheyWaitFor() {
        long begun = System.nanoTime();
        try (Bench bench = opened(settings -> slow(settings.port(), true))) {
            assertThat(bench.meters())
                    .extracting(worker -> worker.name())
                    .containsExactly("meter 0", "meter 1", "meter 2", "meter 3", "meter 4", "meter 5");
        }
        long millis = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun);
        assertThat(millis).isBetween(SLOW_MILLIS, METERS * SLOW_MILLIS / 2);
        assertThat(told)
                .first()
                .isEqualTo("each instrument is asked who it is: meter 0, meter 1, meter 2, meter 3,"
                        + " meter 4, meter 5");
        assertThat(told.get(1)).startsWith("still waiting for meter");
        assertThat(open).hasValue(0);
    }

    @Test
    void oneThatFailsIsNamedAndEveryLineIsClosedAgain() {
        assertThatThrownBy(() -> opened(
                        settings -> slow(settings.port(), !settings.port().equals("2"))))
                .isInstanceOf(LineException.class)
                .hasMessageContaining("meter 2");
        assertThat(open).hasValue(0);
    }
}
