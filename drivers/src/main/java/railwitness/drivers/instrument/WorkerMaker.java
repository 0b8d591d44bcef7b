package railwitness.drivers.instrument;

import java.util.function.Function;
import railwitness.drivers.line.Line;
import railwitness.drivers.time.Scheduler;
import railwitness.drivers.time.VirtualScheduler;

/** Gives an instrument its worker. */
public interface WorkerMaker {
    /** @param line closed with the station */
    <I extends Instrument> InstrumentWorker<I> make(I instrument, Line line);

    /**
     * A station whose instrument is worked by a person.
     *
     * @param made makes the instrument, given how its requests wait for them
     */
    <I extends Instrument> InstrumentWorker<I> byHand(Function<HandWait, I> made);

    /** True where several instruments are talked to at the same time. */
    default boolean sideBySide() {
        return false;
    }

    /** A thread for each instrument. */
    static WorkerMaker threaded(Scheduler scheduler) {
        return new WorkerMaker() {
            @Override
            public <I extends Instrument> InstrumentWorker<I> make(I instrument, Line line) {
                return new ThreadedWorker<>(instrument, scheduler, line);
            }

            @Override
            public <I extends Instrument> InstrumentWorker<I> byHand(Function<HandWait, I> made) {
                return new ThreadedWorker<>(made.apply(new ThreadedHandWait(scheduler)), scheduler, new HandLine());
            }

            @Override
            public boolean sideBySide() {
                return true;
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

            @Override
            public <I extends Instrument> InstrumentWorker<I> byHand(Function<HandWait, I> made) {
                return new LockstepWorker<>(made, scheduler);
            }
        };
    }
}
