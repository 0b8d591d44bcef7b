package railwitness.drivers.time;

import java.time.Instant;
import java.util.function.BooleanSupplier;

/**
 * The scheduler of a real bench. Its origin is the moment it was made. Tasks run on the thread that calls {@link
 * #runUntil}; what a task throws ends that call. A condition that changes without a task is seen after the next task,
 * so whoever changes it posts one.
 */
public final class RealScheduler implements Scheduler {
    private final long originNanos;
    private final DueQueue queue = new DueQueue();

    public RealScheduler() {
        this(0);
    }

    /** @param alreadyNanos what its clock shows at once, where a session goes on; 0 or more */
    public RealScheduler(long alreadyNanos) {
        originNanos = System.nanoTime() - alreadyNanos;
    }

    @Override
    public long nowNanos() {
        return System.nanoTime() - originNanos;
    }

    @Override
    public Instant wallNow() {
        return Instant.now();
    }

    @Override
    public void post(Runnable task) {
        queue.add(nowNanos(), task);
    }

    @Override
    public Due at(long nanos, Runnable task) {
        return queue.add(nanos, task);
    }

    /** @throws IllegalStateException when the waiting thread is interrupted */
    @Override
    public void runUntil(BooleanSupplier done) {
        while (!done.getAsBoolean()) {
            next().run();
        }
    }

    private DueTask next() {
        try {
            return queue.await(this::nowNanos);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while waiting for the next thing due", e);
        }
    }
}
