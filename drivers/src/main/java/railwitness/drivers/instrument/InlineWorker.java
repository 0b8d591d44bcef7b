package railwitness.drivers.instrument;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.time.VirtualScheduler;

/**
 * A station on the virtual scheduler: each request is worked out in one go when the instrument is free, and its outcome is
 * due when the exchange would have ended. To be used on the scheduler's thread only.
 */
public final class InlineWorker<I extends Instrument> implements InstrumentWorker<I> {
    private final I instrument;
    private final VirtualScheduler scheduler;
    private final Line line;
    private final Deque<Request<?>> waiting = new ArrayDeque<>();
    private boolean busy;
    private boolean closed;

    /** @param line closed with the station */
    public InlineWorker(I instrument, VirtualScheduler scheduler, Line line) {
        this.instrument = instrument;
        this.scheduler = scheduler;
        this.line = line;
    }

    @Override
    public I instrument() {
        return instrument;
    }

    @Override
    public <T> void ask(Callable<T> request, Consumer<RequestOutcome<T>> then) {
        waiting.addLast(new Request<>(request, then));
        goOn();
    }

    @Override
    public <T> void askFirst(Callable<T> request, Consumer<RequestOutcome<T>> then) {
        waiting.addFirst(new Request<>(request, then));
        goOn();
    }

    private void goOn() {
        if (busy || waiting.isEmpty()) {
            return;
        }
        busy = true;
        Request<?> request = waiting.poll();
        if (closed) {
            request.fail(LineException.closed(line.port(), ""));
            ended(request);
            return;
        }
        Duration spent = scheduler.aside(request::run);
        scheduler.after(spent, () -> ended(request));
    }

    private void ended(Request<?> request) {
        try {
            request.report();
        } finally {
            busy = false;
            goOn();
        }
    }

    @Override
    public void close() {
        closed = true;
        line.close();
    }
}
