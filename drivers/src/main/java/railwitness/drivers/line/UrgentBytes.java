package railwitness.drivers.line;

import java.util.Arrays;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;

/**
 * Bytes that are to leave before anything else, handed over without waiting: a thread of its own writes them, and
 * whoever writes next writes them first. Where the wire takes nothing, the same bytes wait only once.
 */
final class UrgentBytes {
    private final ConcurrentLinkedQueue<byte[]> waiting = new ConcurrentLinkedQueue<>();
    private final Semaphore called = new Semaphore(0);
    private final ReentrantLock writing;
    private final Consumer<byte[]> wire;
    private volatile boolean ended;

    /**
     * @param writing held while bytes are put on the wire
     * @param wire puts them there; called with the lock held
     */
    UrgentBytes(String port, ReentrantLock writing, Consumer<byte[]> wire) {
        this.writing = writing;
        this.wire = wire;
        Thread thread = new Thread(this::work, "urgent bytes of " + port);
        thread.setDaemon(true);
        thread.start();
    }

    /** From any thread; returns at once. */
    void add(byte[] bytes) {
        if (waiting.stream().noneMatch(other -> Arrays.equals(other, bytes))) {
            waiting.add(bytes);
        }
        called.release();
    }

    /** Writes what waits; to be called with the lock held, before anything else is written. */
    void flush() {
        for (byte[] next = waiting.poll(); next != null; next = waiting.poll()) {
            wire.accept(next);
        }
    }

    private void work() {
        try {
            while (!ended) {
                called.acquire();
                writing.lockInterruptibly();
                try {
                    flush();
                } finally {
                    writing.unlock();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** No more will come. */
    void end() {
        ended = true;
        called.release();
    }
}
