package railwitness.drivers.time;

import java.time.Duration;
import java.time.Instant;
import java.util.function.BooleanSupplier;

/**
 * The scheduler of a fast rehearsal: one thread, no waiting. The clock jumps to the time of each task. What a task throws
 * ends {@link #runUntil}.
 *
 * <p>{@link #atRealPace} keeps the one thread but waits for the real clock between tasks.
 *
 * <p>An request to an instrument is worked out inside one task although it takes time. Its line {@link #spend}s that
 * time, so the clock moves on within the request; {@link #aside} then turns it back, and the outcome is made due later.
 */
public final class VirtualScheduler implements Scheduler {
    private final Instant start;
    /** Seconds of the session in one second of the real clock; zero where it does not wait. */
    private final double pace;

    private final long originNanos = System.nanoTime();
    private final DueQueue queue = new DueQueue();
    private volatile long nowNanos;

    /** @param start wall clock at the origin of the virtual time */
    public VirtualScheduler(Instant start) {
        this(start, 0);
    }

    private VirtualScheduler(Instant start, double pace) {
        this.start = start;
        this.pace = pace;
    }

    /** A virtual scheduler that waits until each thing is due by the real clock: a rehearsal to be watched. */
    public static VirtualScheduler atRealPace(Instant start) {
        return atPace(start, 1);
    }

    /**
     * As at the real pace, but so many times as fast.
     *
     * @param times above zero, at most 1000
     */
    public static VirtualScheduler atPace(Instant start, double times) {
        if (!(times > 0 && times <= 1000)) {
            throw new IllegalArgumentException("pace " + times + " must be above 0 and at most 1000");
        }
        return new VirtualScheduler(start, times);
    }

    @Override
    public long nowNanos() {
        return nowNanos;
    }

    @Override
    public Instant wallNow() {
        return start.plusNanos(nowNanos);
    }

    @Override
    public void post(Runnable task) {
        queue.add(nowNanos, task);
    }

    @Override
    public Due at(long nanos, Runnable task) {
        return queue.add(Math.max(nanos, nowNanos), task);
    }

    /**
     * Moves the clock on by what an exchange takes. Outside of {@link #aside} the time stays spent.
     *
     * @param time zero or more
     */
    public void spend(Duration time) {
        if (time.isNegative()) {
            throw new IllegalArgumentException("time " + time + " must be zero or more");
        }
        nowNanos += time.toNanos();
    }

    /** Runs the request, then turns the clock back to where it was; returns what the request spent, also when it throws
     * nothing. What the request throws is passed on, the clock turned back all the same. */
    public Duration aside(Runnable request) {
        long before = nowNanos;
        try {
            request.run();
            return Duration.ofNanos(nowNanos - before);
        } finally {
            nowNanos = before;
        }
    }

    @Override
    public void runUntil(BooleanSupplier done) {
        while (!done.getAsBoolean()) {
            DueTask next = pace > 0 ? awaited() : queue.first();
            if (next == null) {
                throw new IllegalStateException("nothing is left to do, and what was waited for has not come");
            }
            nowNanos = Math.max(nowNanos, next.nanos());
            next.run();
        }
    }

    private DueTask awaited() {
        try {
            return queue.await(() -> (long) ((System.nanoTime() - originNanos) * pace), pace);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while waiting for the next thing due", e);
        }
    }
}
