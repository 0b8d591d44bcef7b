package railwitness.safety.campaign;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicLong;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.Meter;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.RealScheduler;
import railwitness.safety.interlock.Event;
import railwitness.safety.interlock.Interlock;
import railwitness.safety.interlock.Limits;
import railwitness.safety.interlock.Phase;
import railwitness.safety.interlock.Watch;
import railwitness.safety.power.Power;
import railwitness.safety.power.PowerLog;
import railwitness.safety.power.Rails;

/**
 * From the last byte of the offending reply of a meter to the first byte of off at the far end of the supply's
 * pseudo-terminal, while the supply is being polled without a pause. Argument: trips. Prints a table.
 */
final class TripBenchmark implements PowerLog {
    private static final Channel PLUS = Channel.of("plus.voltage");
    private static final Watch WATCH = Watch.of("plus rail", PLUS, Duration.ofSeconds(30), Limits.atMost(45));
    private static final String SHEET = """
            [bench]
            name = "trips"
            source = "supply"
            [[instrument]]
            name = "supply"
            kind = "supply"
            port = "%s"
            dialect = "scpi-1999"
            [[instrument]]
            name = "meter"
            kind = "meter"
            port = "%s"
            dialect = "scpi-1999"
            reads = "plus.voltage"
            range = 100
            """;

    private final RealScheduler scheduler = new RealScheduler();
    private final AtomicLong offHeard = new AtomicLong();
    private Interlock interlock;
    private Power power;

    public static void main(String[] arguments) {
        int trips = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10_000;
        System.out.println(table(new TripBenchmark().run(trips)));
        System.exit(0);
    }

    static String table(double[] millis) {
        double[] sorted = millis.clone();
        Arrays.sort(sorted);
        return String.format(
                Locale.ROOT,
                "| trips | missed | median ms | p99 ms | max ms |%n|---|---|---|---|---|%n| %d | %d | %.3f | %.3f | %.3f |",
                sorted.length,
                Arrays.stream(sorted)
                        .filter(one -> one == Double.POSITIVE_INFINITY)
                        .count(),
                sorted[sorted.length / 2],
                sorted[(int) (0.99 * sorted.length)],
                sorted[sorted.length - 1]);
    }

    /** Milliseconds of each trip; infinite for one that was missed. */
    double[] run(int trips) {
        double[] millis = new double[trips];
        try (QuickInstrument supply = new QuickInstrument(nanos -> offHeard.compareAndSet(0, nanos));
                QuickInstrument meter = new QuickInstrument(nanos -> {});
                Bench bench = bench(supply, meter)) {
            pollSupply(bench);
            for (int i = 0; i < trips; i++) {
                millis[i] = trip(bench, supply, meter);
            }
        }
        return millis;
    }

    private Bench bench(QuickInstrument supply, QuickInstrument meter) {
        BenchSheet sheet = Sheet.of("bench.toml", String.format(SHEET, supply.device(), meter.device()))
                .read(BenchSheet::from);
        return Bench.open(sheet, SerialLine::open, scheduler, WorkerMaker.threaded(scheduler), ExchangeLog.none());
    }

    private void pollSupply(Bench bench) {
        bench.supply().ask(() -> bench.supply().instrument().poll(), outcome -> pollSupply(bench));
    }

    private double trip(Bench bench, QuickInstrument supply, QuickInstrument meter) {
        supply.switchOn();
        power = new Power(scheduler, bench.supply(), List.of(), new Rails(List.of(), List.of(), 5), () -> true, this);
        interlock = Interlock.of(List.of(WATCH), Duration.ofSeconds(30), scheduler.nowNanos());
        meter.reads(36);
        read(bench);
        next(new Event.Enter(Phase.UP, scheduler.nowNanos()));
        if (interlock.trip().isPresent()) {
            throw new IllegalStateException("tripped before its time");
        }
        offHeard.set(0);
        meter.reads(50);
        read(bench);
        long answered = meter.answeredNanos();
        long until = System.nanoTime() + 2_000_000_000L;
        while (offHeard.get() == 0 && System.nanoTime() < until) {
            java.util.concurrent.locks.LockSupport.parkNanos(50_000);
        }
        power.release();
        long heard = offHeard.get();
        return heard == 0 ? Double.POSITIVE_INFINITY : (heard - answered) / 1e6;
    }

    private void read(Bench bench) {
        InstrumentWorker<Meter> meter = bench.meters().get(0);
        boolean[] done = {false};
        meter.ask(() -> meter.instrument().poll(), outcome -> {
            outcome.either(this::heard, why -> {});
            done[0] = true;
        });
        scheduler.runUntil(() -> done[0]);
    }

    private void heard(PollResult pollResult) {
        for (Reading reading : pollResult.readings()) {
            next(new Event.Read(reading));
        }
    }

    private void next(Event event) {
        boolean before = interlock.trip().isPresent();
        interlock = interlock.next(event);
        if (!before && interlock.trip().isPresent()) {
            power.off(interlock.trip().get().words(), ended -> {});
        }
    }

    @Override
    public void step(long atNanos, String what, String words) {
        // only the time counts here
    }

    @Override
    public void alarm(long atNanos, String words) {
        // the far end is looked at itself
    }

    @Override
    public void alarmOver(long atNanos, String words) {
        // nothing to take back
    }
}
