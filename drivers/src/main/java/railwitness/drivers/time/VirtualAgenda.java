package railwitness.drivers.time;

import java.time.Duration;
import java.time.Instant;
import java.util.function.BooleanSupplier;

/**
 * The agenda of a fast rehearsal: one thread, no waiting. The clock jumps to the time of each task. What a task throws
 * ends {@link #runUntil}.
 *
 * <p>{@link #atRealPace} keeps the one thread but waits for the real clock between tasks.
 *
 * <p>An errand to an instrument is worked out inside one task although it takes time. Its line {@link #spend}s that
 * time, so the clock moves on within the errand; {@link #aside} then turns it back, and the outcome is made due later.
 */
public final class VirtualAgenda implements Agenda {
    private final Instant start;
    /** Seconds of the session in one second of the real clock; nought where it does not wait. */
    private final double pace;

    private final long originNanos = System.nanoTime();
    private final DueQueue queue = new DueQueue();
    private volatile long nowNanos;

    /** @param start wall clock at the origin of the virtual time */
    public VirtualAgenda(Instant start) {
        this(start, 0);
    }

    private VirtualAgenda(Instant start, double pace) {
        this.start = start;
        this.pace = pace;
    }

    /** A virtual agenda that waits until each thing is due by the real clock: a rehearsal to be watched. */
    public static VirtualAgenda atRealPace(Instant start) {
        return atPace(start, 1);
    }

    /**
     * As at the real pace, but so many times as fast.
     *
     * @param times above nought, at most 1000
     */
    public static VirtualAgenda atPace(Instant start, double times) {
        if (!(times > 0 && times <= 1000)) {
            throw new IllegalArgumentException("pace " + times + " must be above 0 and at most 1000");
        }
        return new VirtualAgenda(start, times);
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
     * @param time nought or more
     */
    public void spend(Duration time) {
        if (time.isNegative()) {
            throw new IllegalArgumentException("time " + time + " must be nought or more");
        }
        nowNanos += time.toNanos();
    }

    /** Runs the errand, then turns the clock back to where it was; returns what the errand spent, also when it throws
     * nothing. What the errand throws is passed on, the clock turned back all the same. */
    public Duration aside(Runnable errand) {
        long before = nowNanos;
        try {
            errand.run();
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
