package railwitness.drivers.time;

import java.util.PriorityQueue;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongSupplier;

/** Tasks in the order of their times; equal times keep the order in which they were added. Safe for all threads. */
final class DueQueue {
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition changed = lock.newCondition();
    private final PriorityQueue<DueTask> tasks = new PriorityQueue<>();
    private long added;

    Due add(long nanos, Runnable task) {
        lock.lock();
        try {
            DueTask due = new DueTask(nanos, added++, task);
            tasks.add(due);
            changed.signal();
            return due;
        } finally {
            lock.unlock();
        }
    }

    /** Takes the first task whatever its time; null when none is left. */
    DueTask first() {
        lock.lock();
        try {
            dropCancelled();
            return tasks.poll();
        } finally {
            lock.unlock();
        }
    }

    /** Waits until the first task is due by a clock of ordinary pace and takes it. */
    DueTask await(LongSupplier nowNanos) throws InterruptedException {
        return await(nowNanos, 1);
    }

    /** @param pace how many seconds of that clock go by in one second */
    DueTask await(LongSupplier nowNanos, double pace) throws InterruptedException {
        lock.lockInterruptibly();
        try {
            while (true) {
                dropCancelled();
                DueTask first = tasks.peek();
                if (first == null) {
                    changed.await();
                } else if (first.nanos() <= nowNanos.getAsLong()) {
                    return tasks.poll();
                } else {
                    changed.awaitNanos((long) ((first.nanos() - nowNanos.getAsLong()) / pace));
                }
            }
        } finally {
            lock.unlock();
        }
    }

    private void dropCancelled() {
        while (!tasks.isEmpty() && tasks.peek().isCancelled()) {
            tasks.poll();
        }
    }
}
