package railwitness.drivers.instrument;

import java.util.concurrent.BlockingDeque;
import java.util.concurrent.Callable;
import java.util.concurrent.LinkedBlockingDeque;
import java.util.function.Consumer;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.time.Scheduler;

/** A station with a thread of its own; outcomes are posted to the scheduler. */
public final class ThreadedWorker<I extends Instrument> implements InstrumentWorker<I> {
    private static final long LONGEST_CLOSING_MILLIS = 5000;

    private final I instrument;
    private final Scheduler scheduler;
    private final Line line;
    private final BlockingDeque<Request<?>> waiting = new LinkedBlockingDeque<>();
    private final Request<Void> end = new Request<>(() -> null, nothing -> {});
    private final Thread worker;
    private volatile boolean closed;

    /** @param line closed with the station */
    public ThreadedWorker(I instrument, Scheduler scheduler, Line line) {
        this.instrument = instrument;
        this.scheduler = scheduler;
        this.line = line;
        worker = new Thread(this::work, "station " + instrument.name());
        worker.setDaemon(true);
        worker.start();
    }

    @Override
    public I instrument() {
        return instrument;
    }

    @Override
    public <T> void ask(Callable<T> request, Consumer<RequestOutcome<T>> then) {
        take(new Request<>(request, then), false);
    }

    @Override
    public <T> void askFirst(Callable<T> request, Consumer<RequestOutcome<T>> then) {
        take(new Request<>(request, then), true);
    }

    private void take(Request<?> request, boolean first) {
        if (closed) {
            request.fail(LineException.closed(line.port(), ""));
            scheduler.post(request::report);
        } else if (first) {
            waiting.addFirst(request);
        } else {
            waiting.addLast(request);
        }
    }

    private void work() {
        try {
            for (Request<?> next = waiting.take(); next != end; next = waiting.take()) {
                Request<?> request = next;
                if (closed) {
                    request.fail(LineException.closed(line.port(), ""));
                } else {
                    request.run();
                }
                scheduler.post(request::report);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Requests not begun fail; the one under way ends by its own deadline first, within 5 s. */
    @Override
    public void close() {
        closed = true;
        waiting.addLast(end);
        try {
            worker.join(LONGEST_CLOSING_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        line.close();
    }
}
