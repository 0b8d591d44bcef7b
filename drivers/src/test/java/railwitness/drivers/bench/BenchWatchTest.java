package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.line.PeerTerminal;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.VirtualScheduler;

/** Watching a bench of which not everything is there. */
@Execution(ExecutionMode.CONCURRENT)
@Timeout(30)
class BenchWatchTest {
    private final Map<String, Seen> seen = new ConcurrentHashMap<>();

    private static ScriptedPeer supply() {
        return new ScriptedPeer("Workshop,S-1-RF,1,1.0")
                .answers("OUTP:STAT?", "0")
                .answers("MEAS:VOLT:DC?", "0.002")
                .answers("MEAS:CURR:DC?", "0")
                .answers("OUTP:MODE?", "CV");
    }

    private static BenchSheet sheet(String supplyPort, String plusPort, String minusPort) {
        return Sheet.of("bench.toml", """
                [bench]
                name = "wharf"
                [[instrument]]
                name = "supply"
                kind = "supply"
                port = "%s"
                answer_within_s = 0.2
                [[instrument]]
                name = "plus meter"
                kind = "meter"
                port = "%s"
                reads = "plus.voltage"
                answer_within_s = 0.2
                [[instrument]]
                name = "minus meter"
                kind = "meter"
                port = "%s"
                reads = "minus.voltage"
                expect = "M-1"
                answer_within_s = 0.2
                """.formatted(supplyPort, plusPort, minusPort))
                .read(BenchSheet::from);
    }

    private BenchWatch watch(BenchSheet sheet) {
        return BenchWatch.of(sheet.instruments(), SerialLine::open, one -> seen.put(one.instrument(), one));
    }

    private static void until(BooleanSupplier holds) throws InterruptedException {
        while (!holds.getAsBoolean()) {
            Thread.sleep(10);
        }
    }

    private boolean answers(String name) {
        return seen.containsKey(name) && seen.get(name).state() == Seen.State.ANSWERS;
    }

    private boolean absent(String name) {
        return seen.containsKey(name) && seen.get(name).state() == Seen.State.ABSENT;
    }

    @Test
    void absentInstrumentsSayWhyAndHideNobody() throws InterruptedException {
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        ScriptedPeer another = new ScriptedPeer("Workshop,X-9,7,1.0");
        try (PeerTerminal first = new PeerTerminal("supply", supply(), "\r\n");
                PeerTerminal last = new PeerTerminal("minus", another, "\n");
                BenchWatch watch = watch(sheet(first.device(), "/dev/there-is-none", last.device()))) {
            until(() -> answers("supply") && absent("plus meter") && absent("minus meter"));
            assertThat(watch.over()).isNotDone();
        }
        assertThat(seen.get("supply").identity().orElseThrow().model()).isEqualTo("S-1-RF");
        assertThat(((Measured) seen.get("supply")
                                .pollResult()
                                .orElseThrow()
                                .readings()
                                .get(0))
                        .value())
                .isEqualTo(0.002);
        assertThat(seen.get("plus meter").trouble()).contains(Trouble.NO_SUCH_PORT);
        assertThat(seen.get("minus meter").trouble()).contains(Trouble.WRONG_INSTRUMENT);
        assertThat(seen.get("minus meter").why()).contains("X-9");
    }

    @Test
    void portsAreFreeOnceTheWatchIsClosed() throws InterruptedException {
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        try (PeerTerminal first = new PeerTerminal("supply", supply(), "\r\n")) {
            BenchWatch watch = watch(sheet(first.device(), "/dev/there-is-none", "/dev/nor-there"));
            until(() -> answers("supply"));
            watch.close();
            SerialLine.open(PortSettings.usual(first.device())).close();
        }
    }

    @Test
    void everyWishToSwitchOffResetsTheSupplyAnew() throws InterruptedException {
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        ScriptedPeer supply = supply();
        try (PeerTerminal first = new PeerTerminal("supply", supply, "\r\n");
                BenchWatch watch = watch(sheet(first.device(), "/dev/there-is-none", "/dev/nor-there"))) {
            until(() -> answers("supply"));
            assertThat(resets(supply)).isEqualTo(1);
            watch.reset();
            until(() -> resets(supply) == 2);
        }
    }

    private static long resets(ScriptedPeer supply) {
        return supply.heard().stream()
                .filter(message -> message.contains("*RST"))
                .count();
    }

    @Test
    void anInstrumentPulledOutIsNamedWhileTheOthersGoOn() throws InterruptedException {
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        ScriptedPeer meter = new ScriptedPeer("Workshop,M-1,7,1.0").answers("READ?", "+3.65E+01");
        try (PeerTerminal first = new PeerTerminal("supply", supply(), "\r\n")) {
            PeerTerminal pulled = new PeerTerminal("minus", meter, "\n");
            try (BenchWatch watch = watch(sheet(first.device(), "/dev/there-is-none", pulled.device()))) {
                until(() -> answers("minus meter"));
                pulled.close();
                until(() -> absent("minus meter"));
                Seen before = seen.get("supply");
                until(() -> seen.get("supply") != before);
                assertThat(answers("supply")).isTrue();
                assertThat(watch.over()).isNotDone();
            }
        }
    }

    @Test
    void theVirtualBenchIsWatchedAtRest() throws InterruptedException {
        BenchSheet sheet = sheet("a", "b", "c");
        VirtualScheduler scheduler = new VirtualScheduler(Instant.EPOCH);
        VirtualBench bench = VirtualBench.of(Specimen.usual(), List.of(), sheet, 1, scheduler::nowNanos);
        try (BenchWatch watch = BenchWatch.inline(
                sheet.instruments(), bench.opener(scheduler), scheduler, one -> seen.put(one.instrument(), one))) {
            until(() -> answers("supply") && answers("plus meter"));
            assertThat(watch.over()).isNotDone();
        }
        assertThat(bench.supply("supply").isOn()).isFalse();
        assertThat(((Measured) seen.get("plus meter")
                                .pollResult()
                                .orElseThrow()
                                .readings()
                                .get(0))
                        .value())
                .isZero();
    }
}
