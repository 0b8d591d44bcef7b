package railwitness.drivers.time;

import java.time.Duration;
import java.time.Instant;
import java.util.function.BooleanSupplier;

/**
 * The queue of things due in a session. All tasks run one after the other on the thread that called {@link #runUntil};
 * {@link #post} and {@link #at} may be called from any thread.
 */
public interface Scheduler {
    /** Monotonic time since the session's origin, ns. */
    long nowNanos();

    /** The wall clock now; on the virtual scheduler the start moved on by virtual time. */
    Instant wallNow();

    /** Runs the task as soon as those before it are done. */
    void post(Runnable task);

    /** Runs the task at or soon after the given time, ns; a time gone by means at once. */
    Due at(long nanos, Runnable task);

    /** Runs the task after the given time from now. */
    default Due after(Duration delay, Runnable task) {
        return at(nowNanos() + delay.toNanos(), task);
    }

    /**
     * Works through the queue on the calling thread until the condition holds. It is asked after each task.
     *
     * @throws IllegalStateException on the virtual scheduler when nothing is left to do and the condition does not hold
     */
    void runUntil(BooleanSupplier done);
}
