package railwitness.logger.ui.screen.bench;

import java.util.List;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;

/** The virtual bench at rest, built by whoever opens its first port, for building it takes a moment. */
final class VirtualRest implements LineOpener {
    private final Sheets sheets;
    private final long seed;
    private final VirtualScheduler scheduler;
    private VirtualBench bench;

    VirtualRest(Sheets sheets, long seed, VirtualScheduler scheduler) {
        this.sheets = sheets;
        this.seed = seed;
        this.scheduler = scheduler;
    }

    VirtualScheduler scheduler() {
        return scheduler;
    }

    synchronized VirtualBench bench() {
        if (bench == null) {
            bench = FixtureMaker.bench(sheets, List.of(), seed, scheduler::nowNanos);
        }
        return bench;
    }

    /** What a meter without a wire shows now, in the channel's unit. */
    double atRest(HandRead meter) {
        VirtualBench built = bench();
        synchronized (built.world()) {
            return built.readByHand(meter);
        }
    }

    @Override
    public Line open(PortSettings settings) {
        return bench().opener(scheduler).open(settings);
    }
}
