package railwitness.logger.screen.bench;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.Station;
import railwitness.drivers.instrument.StationMaker;
import railwitness.drivers.instrument.Sweep;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.time.Agenda;
import railwitness.drivers.time.RealAgenda;
import railwitness.drivers.time.VirtualAgenda;
import railwitness.logger.rehearsal.FixtureMaker;
import railwitness.logger.screen.paper.Trouble;
import railwitness.logger.sheet.Sheets;

/** One look at all instruments of a bench: who they are and what they read, outputs off. Slow: not for the event thread. */
record BenchLook(Sheets sheets, boolean virtual) {
    /**
     * What was seen.
     *
     * @param identities by name of the instrument
     * @param sweeps by name of the instrument
     * @param trouble why there is no more; empty when all answered
     */
    record Looked(Map<String, String> identities, Map<String, Sweep> sweeps, String trouble) {
        static final Looked NOTHING = new Looked(Map.of(), Map.of(), "");
    }

    Looked once() {
        if (!virtual) {
            Agenda agenda = new RealAgenda();
            return seen(agenda, SerialLine::open, StationMaker.threaded(agenda));
        }
        VirtualAgenda agenda = new VirtualAgenda(Instant.now());
        VirtualBench bench = FixtureMaker.bench(sheets, java.util.List.of(), 1, agenda::nowNanos);
        return seen(agenda, bench.opener(agenda), StationMaker.inline(agenda));
    }

    private Looked seen(Agenda agenda, LineOpener opener, StationMaker maker) {
        Map<String, String> identities = new HashMap<>();
        Map<String, Sweep> sweeps = new HashMap<>();
        StringBuilder trouble = new StringBuilder();
        try (Bench bench = Bench.open(sheets.bench().content(), opener, agenda, maker, ExchangeLog.none())) {
            int[] open = {bench.stations().size()};
            for (Station<? extends Instrument> station : bench.stations()) {
                identities.put(station.name(), station.instrument().identity().toString());
                station.ask(() -> station.instrument().poll(), outcome -> {
                    outcome.either(
                            sweep -> sweeps.put(station.name(), sweep),
                            why -> trouble.append(trouble.isEmpty() ? "" : "; ").append(why.getMessage()));
                    open[0]--;
                });
            }
            agenda.runUntil(() -> open[0] == 0);
        } catch (RuntimeException e) {
            trouble.append(Trouble.words(e));
        }
        return new Looked(identities, sweeps, trouble.toString());
    }
}
