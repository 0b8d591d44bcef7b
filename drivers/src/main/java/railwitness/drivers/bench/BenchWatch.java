package railwitness.drivers.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.time.RealScheduler;
import railwitness.drivers.time.Scheduler;
import railwitness.drivers.time.VirtualScheduler;

/**
 * Instruments that are looked at again and again before there is power: each is asked who it is, reset (which switches
 * outputs and inputs off), set up and then polled. One that is silent, missing or another than expected keeps nobody
 * else waiting. Nothing is ever switched on.
 */
public final class BenchWatch implements AutoCloseable {
    /** From one look to the next. */
    private static final Duration ROUND = Duration.ofMillis(500);
    /** An instrument that was not there is asked again after this. */
    private static final Duration PAUSE = Duration.ofSeconds(2);
    /** A wish to reset everything waits no longer than this. */
    private static final long SLICE_MILLIS = 40;

    private final CountDownLatch ending = new CountDownLatch(1);
    private final AtomicInteger resets = new AtomicInteger();
    private final CompletableFuture<Void> over;
    private final Consumer<Seen> told;

    private BenchWatch(List<List<InstrumentProbe>> threads, Consumer<Seen> told) {
        this.told = told;
        List<CompletableFuture<Void>> all = new ArrayList<>();
        for (List<InstrumentProbe> together : threads) {
            CompletableFuture<Void> done = new CompletableFuture<>();
            all.add(done);
            Thread thread = new Thread(
                    () -> watch(together, done), "watch " + together.get(0).name());
            thread.setDaemon(true);
            thread.start();
        }
        over = CompletableFuture.allOf(all.toArray(new CompletableFuture<?>[0]));
    }

    /**
     * On real ports, each instrument on a thread of its own.
     *
     * @param told what is seen, on those threads
     */
    public static BenchWatch of(List<InstrumentSheet> instruments, LineOpener opener, Consumer<Seen> told) {
        Scheduler scheduler = new RealScheduler();
        return new BenchWatch(
                instruments.stream()
                        .filter(sheet -> !sheet.isByHand())
                        .map(sheet -> List.of(new InstrumentProbe(sheet, opener, scheduler)))
                        .toList(),
                told);
    }

    /** On the virtual bench, one after the other on one thread, as its clock demands. */
    public static BenchWatch inline(
            List<InstrumentSheet> instruments, LineOpener opener, VirtualScheduler scheduler, Consumer<Seen> told) {
        List<InstrumentProbe> all = instruments.stream()
                .filter(sheet -> !sheet.isByHand())
                .map(sheet -> new InstrumentProbe(sheet, opener, scheduler))
                .toList();
        return new BenchWatch(all.isEmpty() ? List.of() : List.of(all), told);
    }

    private void watch(List<InstrumentProbe> together, CompletableFuture<Void> done) {
        try {
            together.forEach(one -> told.accept(Seen.asking(one.name())));
            int reset = resets.get();
            boolean present = look(together);
            while (!ended(present ? ROUND : PAUSE, reset)) {
                if (resets.get() != reset) {
                    reset = resets.get();
                    together.forEach(InstrumentProbe::hangUp);
                }
                present = look(together);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            together.forEach(InstrumentProbe::hangUp);
            done.complete(null);
        }
    }

    /** Waits for the next look, less long where a reset is wanted; answers whether there will be none. */
    private boolean ended(Duration pause, int reset) throws InterruptedException {
        long until = System.nanoTime() + pause.toNanos();
        while (System.nanoTime() - until < 0 && resets.get() == reset) {
            if (ending.await(SLICE_MILLIS, TimeUnit.MILLISECONDS)) {
                return true;
            }
        }
        return ending.getCount() == 0;
    }

    /** Whether anybody was there. */
    private boolean look(List<InstrumentProbe> together) {
        boolean present = false;
        for (InstrumentProbe one : together) {
            if (ending.getCount() > 0) {
                Seen seen = one.look();
                told.accept(seen);
                present |= seen.state() == Seen.State.ANSWERS;
            }
        }
        return present;
    }

    /** Introduces every instrument anew, which resets it and so switches outputs and inputs off; returns at once. */
    public void reset() {
        resets.incrementAndGet();
    }

    /** No further look; returns at once. The exchanges under way end by their own deadlines. */
    public void end() {
        ending.countDown();
    }

    /** Completes when every port has been let go. */
    public CompletableFuture<Void> over() {
        return over;
    }

    /** Ends it and waits until every port has been let go. */
    @Override
    public void close() {
        end();
        over.join();
    }
}
