package railwitness.drivers.instrument;

import java.util.concurrent.Callable;
import java.util.function.Consumer;

/**
 * An instrument with a worker of its own, so that one slow or silent instrument never holds up another. On a real
 * agenda each station has a thread; on the virtual one the errand is worked out at once and its outcome is due when the
 * exchange would have ended.
 */
public interface Station<I extends Instrument> extends AutoCloseable {
    I instrument();

    default String name() {
        return instrument().name();
    }

    /** Queues an errand behind those asked before; {@code then} runs on the agenda. */
    <T> void ask(Callable<T> errand, Consumer<Outcome<T>> then);

    /** Like {@link #ask}, but before all queued errands. */
    <T> void askFirst(Callable<T> errand, Consumer<Outcome<T>> then);

    /** Ends the worker and closes the line. */
    @Override
    void close();
}
