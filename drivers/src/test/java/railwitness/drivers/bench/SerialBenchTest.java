package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.instrument.RequestOutcome;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.PeerTerminal;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.RealScheduler;

/** A bench over real serial ports: threads, the serial library, pseudo-terminals. */
@Timeout(30)
class SerialBenchTest {
    private final RealScheduler scheduler = new RealScheduler();
    private final List<PollResult> pollResults = new ArrayList<>();

    private static ScriptedPeer supply() {
        return new ScriptedPeer("Workshop,S-1-RF,1,1.0")
                .answers("OUTP:STAT?", "1")
                .answers("MEAS:VOLT:DC?", "13.8")
                .answers("MEAS:CURR:DC?", "4.2")
                .answers("OUTP:MODE?", "CV");
    }

    private static String sheet(String supplyPort, String meterPort) {
        return """
                [bench]
                name = "wharf"
                [[instrument]]
                name = "supply"
                kind = "supply"
                port = "%s"
                [[instrument]]
                name = "plus meter"
                kind = "meter"
                port = "%s"
                reads = "plus.voltage"
                answer_within_s = 0.2
                """.formatted(supplyPort, meterPort);
    }

    private void pollAll(Bench bench) {
        pollResults.clear();
        for (InstrumentWorker<? extends Instrument> worker : bench.workers()) {
            worker.ask(
                    worker.instrument()::poll,
                    (RequestOutcome<PollResult> outcome) -> outcome.either(pollResults::add, why -> {
                        throw why;
                    }));
        }
        scheduler.runUntil(() -> pollResults.size() == 2);
    }

    private PollResult of(String instrument) {
        return pollResults.stream()
                .filter(pollResult -> pollResult.instrument().equals(instrument))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void instrumentsArePolledAndAnUnpluggedOneIsNamed() {
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        ScriptedPeer meter = new ScriptedPeer("Workshop,M-1,7,1.0").answers("READ?", "+3.65E+01");
        try (PeerTerminal far = new PeerTerminal("supply", supply(), "\r\n")) {
            PeerTerminal pulled = new PeerTerminal("meter", meter, "\n");
            String toml = sheet(far.device(), pulled.device());
            try (Bench bench = Bench.open(
                    Sheet.of("bench.toml", toml).read(BenchSheet::from),
                    SerialLine::open,
                    scheduler,
                    WorkerMaker.threaded(scheduler),
                    ExchangeLog.none())) {
                pollAll(bench);
                assertThat(((Measured) of("plus meter").readings().get(0)).value())
                        .isEqualTo(36.5);
                assertThat(of("supply").readings()).allMatch(reading -> reading instanceof Measured);
                pulled.close();
                pollAll(bench);
                assertThat(((Missing) of("plus meter").readings().get(0)).reason())
                        .isEqualTo("unplugged");
                assertThat(of("supply").readings()).allMatch(reading -> reading instanceof Measured);
            }
        }
    }
}
