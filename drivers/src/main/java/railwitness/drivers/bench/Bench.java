package railwitness.drivers.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import railwitness.drivers.instrument.Dialects;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.Meter;
import railwitness.drivers.instrument.Scope;
import railwitness.drivers.instrument.Station;
import railwitness.drivers.instrument.StationMaker;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.time.Agenda;

/** The instruments of a bench sheet, identified, reset and set up, each with its worker. */
public final class Bench implements AutoCloseable {
    private final BenchSheet sheet;
    private final List<Station<? extends Instrument>> stations = new ArrayList<>();
    private final List<Station<Meter>> meters = new ArrayList<>();
    private final Map<String, Station<Load>> loads = new LinkedHashMap<>();
    private Station<Supply> supply;
    private final List<Station<Scope>> scopes = new ArrayList<>();

    private Bench(BenchSheet sheet) {
        this.sheet = sheet;
    }

    /**
     * Opens every line, makes sure that the instrument on it is the right one, resets it (which switches outputs and
     * inputs off) and sets it up. On the virtual agenda this spends time.
     *
     * @param log is told of every exchange, also of those that went wrong
     * @throws railwitness.drivers.line.LineException when one cannot be used; all others are then closed again
     */
    public static Bench open(BenchSheet sheet, LineOpener opener, Agenda agenda, StationMaker maker, ExchangeLog log) {
        Bench bench = new Bench(sheet);
        Dialects dialects = Dialects.shipped();
        try {
            for (InstrumentSheet instrument : sheet.instruments()) {
                bench.take(new Introduction(instrument, opener, agenda, log, dialects).meet(), maker);
            }
            return bench;
        } catch (RuntimeException e) {
            bench.close();
            throw e;
        }
    }

    private void take(Introduction.Met met, StationMaker maker) {
        if (met.instrument() instanceof Supply found) {
            supply = kept(maker.make(found, met.line()));
        } else if (met.instrument() instanceof Load found) {
            loads.put(found.rail(), kept(maker.make(found, met.line())));
        } else if (met.instrument() instanceof Meter found) {
            meters.add(kept(maker.make(found, met.line())));
        } else if (met.instrument() instanceof Scope found) {
            scopes.add(kept(maker.make(found, met.line())));
        }
    }

    private <I extends Instrument> Station<I> kept(Station<I> station) {
        stations.add(station);
        return station;
    }

    public BenchSheet sheet() {
        return sheet;
    }

    /** False only where a battery alone feeds the unit. */
    public boolean hasSupply() {
        return supply != null;
    }

    /** @throws IllegalStateException when there is none */
    public Station<Supply> supply() {
        if (supply == null) {
            throw new IllegalStateException("the bench sheet has no supply");
        }
        return supply;
    }

    /** Programmable loads by rail. */
    public Map<String, Station<Load>> loads() {
        return Map.copyOf(loads);
    }

    public List<Station<Meter>> meters() {
        return List.copyOf(meters);
    }

    /** In the order of the sheet; each looks at one channel. */
    public List<Station<Scope>> scopes() {
        return List.copyOf(scopes);
    }

    /** All of them, in the order of the sheet. */
    public List<Station<? extends Instrument>> stations() {
        return List.copyOf(stations);
    }

    /** Closes every station and its line. Switching off is not done here. */
    @Override
    public void close() {
        stations.forEach(Station::close);
    }
}
