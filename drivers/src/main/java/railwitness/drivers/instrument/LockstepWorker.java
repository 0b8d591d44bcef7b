package railwitness.drivers.instrument;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.Callable;
import java.util.concurrent.Semaphore;
import java.util.function.Consumer;
import java.util.function.Function;
import railwitness.drivers.line.LineException;
import railwitness.drivers.time.Scheduler;

/**
 * A station on the virtual clock whose requests wait for a person. Each runs on a thread of its own, but only while the
 * scheduler's stands still: exactly one of the two goes on at any time, so that the order of things is always the same.
 */
final class LockstepWorker<I extends Instrument> implements InstrumentWorker<I>, HandWait {
    private final Scheduler scheduler;
    private final Deque<Request<?>> waiting = new ArrayDeque<>();
    private final Semaphore mayWork = new Semaphore(0);
    private final Semaphore mayGoOn = new Semaphore(0);
    private final I instrument;
    private Thread worker;
    private boolean busy;
    private boolean finished;
    private boolean parked;
    private boolean closed;

    LockstepWorker(Function<HandWait, I> made, Scheduler scheduler) {
        this.scheduler = scheduler;
        this.instrument = made.apply(this);
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
            request.fail(LineException.closed(HandLine.PORT, ""));
            scheduler.post(() -> ended(request));
            return;
        }
        finished = false;
        worker = new Thread(() -> work(request), "hand of " + instrument.name());
        worker.setDaemon(true);
        worker.start();
        step(request);
    }

    private void work(Request<?> request) {
        mayWork.acquireUninterruptibly();
        request.run();
        finished = true;
        mayGoOn.release();
    }

    /** Lets the request go on until it waits or has ended. */
    private void step(Request<?> request) {
        mayWork.release();
        mayGoOn.acquireUninterruptibly();
        if (finished) {
            scheduler.post(() -> ended(request));
        } else {
            current = request;
        }
    }

    private Request<?> current;

    private void ended(Request<?> request) {
        try {
            request.report();
        } finally {
            busy = false;
            goOn();
        }
    }

    @Override
    public <T> T await(Consumer<Consumer<T>> begin) {
        Answer<T> answer = new Answer<>();
        begin.accept(value -> {
            if (!answer.given) {
                answer.given = true;
                answer.value = value;
                if (parked) {
                    step(current);
                }
            }
        });
        if (!answer.given) {
            park();
        }
        if (closed) {
            throw LineException.closed(HandLine.PORT, "");
        }
        return answer.value;
    }

    private void park() {
        parked = true;
        mayGoOn.release();
        mayWork.acquireUninterruptibly();
        parked = false;
    }

    @Override
    public void post(Runnable task) {
        scheduler.post(task);
    }

    /** A request that still waits fails. */
    @Override
    public void close() {
        closed = true;
        if (parked) {
            step(current);
        }
    }

    private static final class Answer<T> {
        private boolean given;
        private T value;
    }
}
