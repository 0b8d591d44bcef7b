package railwitness.drivers.instrument;

import java.util.concurrent.Callable;
import java.util.function.Consumer;

/**
 * An instrument with a worker of its own, so that one slow or silent instrument never holds up another. On a real
 * scheduler each station has a thread; on the virtual one the request is worked out at once and its outcome is due when the
 * exchange would have ended.
 */
public interface InstrumentWorker<I extends Instrument> extends AutoCloseable {
    I instrument();

    default String name() {
        return instrument().name();
    }

    /** Queues an request behind those asked before; {@code then} runs on the scheduler. */
    <T> void ask(Callable<T> request, Consumer<RequestOutcome<T>> then);

    /** Like {@link #ask}, but before all queued requests. */
    <T> void askFirst(Callable<T> request, Consumer<RequestOutcome<T>> then);

    /** Ends the worker and closes the line. */
    @Override
    void close();
}
