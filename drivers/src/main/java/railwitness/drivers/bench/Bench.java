package railwitness.drivers.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import railwitness.drivers.instrument.Dialects;
import railwitness.drivers.instrument.Hand;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.KnobSupply;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.Meter;
import railwitness.drivers.instrument.Scope;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.instrument.SupplySetting;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.time.Scheduler;

/** The instruments of a bench sheet, identified, reset and set up, each with its worker. */
public final class Bench implements AutoCloseable {
    private final BenchSheet sheet;
    private final List<InstrumentWorker<? extends Instrument>> workers = new ArrayList<>();
    private final List<InstrumentWorker<Meter>> meters = new ArrayList<>();
    private final Map<String, InstrumentWorker<Load>> loads = new LinkedHashMap<>();
    private InstrumentWorker<Supply> supply;
    private final List<InstrumentWorker<Scope>> scopes = new ArrayList<>();

    private Bench(BenchSheet sheet) {
        this.sheet = sheet;
    }

    /**
     * Opens every line, makes sure that the instrument on it is the right one, resets it (which switches outputs and
     * inputs off) and sets it up. On the virtual scheduler this spends time.
     *
     * @param log is told of every exchange, also of those that went wrong
     * @throws railwitness.drivers.line.LineException when one cannot be used; all others are then closed again
     */
    public static Bench open(
            BenchSheet sheet, LineOpener opener, Scheduler scheduler, WorkerMaker maker, ExchangeLog log) {
        return open(sheet, opener, scheduler, maker, log, words -> {});
    }

    /**
     * Like {@link #open(BenchSheet, LineOpener, Scheduler, WorkerMaker, ExchangeLog)}; where the maker gives each
     * instrument a thread, all of them are introduced at the same time.
     *
     * @param told what is waited for, in words, on the calling thread
     */
    public static Bench open(
            BenchSheet sheet,
            LineOpener opener,
            Scheduler scheduler,
            WorkerMaker maker,
            ExchangeLog log,
            Consumer<String> told) {
        return open(sheet, opener, scheduler, maker, log, told, Optional.empty());
    }

    /** @param hand who works the knobs of a supply without a serial line */
    public static Bench open(
            BenchSheet sheet,
            LineOpener opener,
            Scheduler scheduler,
            WorkerMaker maker,
            ExchangeLog log,
            Consumer<String> told,
            Optional<Hand> hand) {
        Bench bench = new Bench(sheet);
        Dialects dialects = Dialects.shipped();
        Function<InstrumentSheet, Introduction> made =
                instrument -> new Introduction(instrument, opener, scheduler, log, dialects);
        try {
            List<InstrumentSheet> wired = sheet.instruments().stream()
                    .filter(instrument -> !instrument.isByHand())
                    .toList();
            sheet.instruments().stream()
                    .filter(InstrumentSheet::isByHand)
                    .forEach(knobs -> bench.take(knobs, maker, hand, scheduler));
            if (maker.sideBySide() && !wired.isEmpty()) {
                Introductions.atOnce(wired, made, told).forEach(met -> bench.take(met, maker));
            } else {
                wired.forEach(instrument -> bench.take(made.apply(instrument).meet(), maker));
            }
            return bench;
        } catch (RuntimeException e) {
            bench.close();
            throw e;
        }
    }

    private void take(InstrumentSheet knobs, WorkerMaker maker, Optional<Hand> hand, Scheduler scheduler) {
        Hand person = hand.orElseThrow(() -> new LineException(
                LineException.Trouble.NO_SUCH_PORT,
                knobs.name() + " has only knobs: here nobody is asked to set them",
                "",
                ""));
        SupplySetting setting = ((Duty.AsSupply) knobs.duty()).setting();
        supply = kept(
                maker.<Supply>byHand(wait -> new KnobSupply(knobs.name(), setting, person, wait, scheduler::nowNanos)));
    }

    private void take(Introduction.Met met, WorkerMaker maker) {
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

    private <I extends Instrument> InstrumentWorker<I> kept(InstrumentWorker<I> worker) {
        workers.add(worker);
        return worker;
    }

    public BenchSheet sheet() {
        return sheet;
    }

    /** False only where a battery alone feeds the unit. */
    public boolean hasSupply() {
        return supply != null;
    }

    /** @throws IllegalStateException when there is none */
    public InstrumentWorker<Supply> supply() {
        if (supply == null) {
            throw new IllegalStateException("the bench sheet has no supply");
        }
        return supply;
    }

    /** Programmable loads by rail. */
    public Map<String, InstrumentWorker<Load>> loads() {
        return Map.copyOf(loads);
    }

    public List<InstrumentWorker<Meter>> meters() {
        return List.copyOf(meters);
    }

    /** In the order of the sheet; each looks at one channel. */
    public List<InstrumentWorker<Scope>> scopes() {
        return List.copyOf(scopes);
    }

    /** All of them, in the order of the sheet. */
    public List<InstrumentWorker<? extends Instrument>> workers() {
        return List.copyOf(workers);
    }

    /** Closes every station and its line. Switching off is not done here. */
    @Override
    public void close() {
        workers.forEach(InstrumentWorker::close);
    }
}
