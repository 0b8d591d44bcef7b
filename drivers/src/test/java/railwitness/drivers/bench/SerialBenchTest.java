package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.Outcome;
import railwitness.drivers.instrument.Station;
import railwitness.drivers.instrument.StationMaker;
import railwitness.drivers.instrument.Sweep;
import railwitness.drivers.line.PeerTerminal;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.RealAgenda;

/** A bench over real serial ports: threads, the serial library, pseudo-terminals. */
@Timeout(30)
class SerialBenchTest {
    private final RealAgenda agenda = new RealAgenda();
    private final List<Sweep> sweeps = new ArrayList<>();

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
        sweeps.clear();
        for (Station<? extends Instrument> station : bench.stations()) {
            station.ask(
                    station.instrument()::poll,
                    (Outcome<Sweep> outcome) -> outcome.either(sweeps::add, why -> {
                        throw why;
                    }));
        }
        agenda.runUntil(() -> sweeps.size() == 2);
    }

    private Sweep of(String instrument) {
        return sweeps.stream()
                .filter(sweep -> sweep.instrument().equals(instrument))
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
                    agenda,
                    StationMaker.threaded(agenda),
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
