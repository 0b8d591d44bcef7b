package railwitness.drivers.instrument;

import railwitness.drivers.line.Line;
import railwitness.drivers.time.Scheduler;
import railwitness.drivers.time.VirtualScheduler;

/** Gives an instrument its worker. */
public interface WorkerMaker {
    /** @param line closed with the station */
    <I extends Instrument> InstrumentWorker<I> make(I instrument, Line line);

    /** A thread for each instrument. */
    static WorkerMaker threaded(Scheduler scheduler) {
        return new WorkerMaker() {
            @Override
            public <I extends Instrument> InstrumentWorker<I> make(I instrument, Line line) {
                return new ThreadedWorker<>(instrument, scheduler, line);
            }
        };
    }

    /** All in the one thread of a virtual scheduler. */
    static WorkerMaker inline(VirtualScheduler scheduler) {
        return new WorkerMaker() {
            @Override
            public <I extends Instrument> InstrumentWorker<I> make(I instrument, Line line) {
                return new InlineWorker<>(instrument, scheduler, line);
            }
        };
    }
}
