package railwitness.logger.recording.store;

import java.time.Instant;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import railwitness.drivers.reading.Reading;

/**
 * Hands what is recorded to the writer without ever holding up the one who records. On a real bench a thread writes from
 * a bounded queue; in a rehearsal ({@link #inline}) the caller's thread writes at once. Trouble of any kind, a mistake in
 * the program and a lack of memory included, is told once, through the callback, so that the run can end safely; what comes
 * after it is still written if at all possible. A session in which the recorder had trouble is never sealed as complete,
 * and says how many entries it lacks.
 */
public final class Recorder implements AutoCloseable {
    private static final long TICK_MILLIS = 200;

    private final SessionWriter writer;
    private final Consumer<StoreException> onTrouble;
    private final BlockingQueue<Consumer<SessionWriter>> queue;
    private final AtomicBoolean troubled = new AtomicBoolean();
    private final AtomicLong dropped = new AtomicLong();
    private final Thread thread;
    private volatile boolean ending;

    private Recorder(SessionWriter writer, int capacity, Consumer<StoreException> onTrouble) {
        this.writer = writer;
        this.onTrouble = onTrouble;
        this.queue = capacity == 0 ? null : new ArrayBlockingQueue<>(capacity);
        this.thread = capacity == 0 ? null : new Thread(this::work, "recorder");
    }

    /**
     * A recorder with a thread of its own.
     *
     * @param capacity how many entries may wait; a full queue is trouble
     * @param onTrouble called once, on the recorder's or the caller's thread
     */
    public static Recorder threaded(SessionWriter writer, int capacity, Consumer<StoreException> onTrouble) {
        if (capacity < 1) {
            throw new IllegalArgumentException("capacity " + capacity + " must be 1 or more");
        }
        Recorder recorder = new Recorder(writer, capacity, onTrouble);
        recorder.thread.start();
        return recorder;
    }

    /** A recorder that writes at once on the thread that calls it. */
    public static Recorder inline(SessionWriter writer, Consumer<StoreException> onTrouble) {
        return new Recorder(writer, 0, onTrouble);
    }

    public void reading(Reading reading) {
        offer(w -> w.reading(reading));
    }

    public void add(Entry entry) {
        offer(w -> w.add(entry));
    }

    /** Anything else that is to be done in its turn with the writer. Never blocks, never throws. */
    public void offer(Consumer<SessionWriter> task) {
        if (ending) {
            return;
        }
        if (queue == null) {
            run(task);
        } else if (!thread.isAlive()) {
            dropped.incrementAndGet();
            trouble(new StoreException("the recorder ended before the run; the run ends with it"));
        } else if (!queue.offer(task)) {
            dropped.incrementAndGet();
            trouble(new StoreException("the disk does not keep up: " + queue.size()
                    + " entries wait to be written; end the run and record on a faster disk"));
        }
    }

    /** True once the callback was called. */
    public boolean isTroubled() {
        return troubled.get();
    }

    /** Compares the wall clock with the session's axis, as {@link SessionWriter#wall}; best called once a second. */
    public void wall(long nanos, Instant wall) {
        offer(w -> w.wall(nanos, wall));
    }

    /**
     * Writes what waits, brings the session to its end and ends the thread. After trouble the session does not end as
     * complete but as tripped, and what it lacks stands among its events.
     */
    public void finish(SessionState state) {
        end(w -> finish(w, isTroubled() && state == SessionState.COMPLETE ? SessionState.TRIPPED : state));
    }

    private void finish(SessionWriter w, SessionState state) {
        long lacking = dropped.get() + w.givenUp();
        if (lacking > 0) {
            w.lacks("the record is not complete: up to " + lacking + (lacking == 1 ? " entry was" : " entries were")
                    + " not written");
        }
        w.finish(state);
    }

    /** Writes what waits and leaves the session unfinished, if {@link #finish} was not called before. */
    @Override
    public void close() {
        end(SessionWriter::close);
    }

    private void end(Consumer<SessionWriter> last) {
        if (ending) {
            return;
        }
        ending = true;
        if (thread != null && thread != Thread.currentThread()) {
            join();
            writeTheRest();
        }
        run(last);
        if (isTroubled()) {
            close(writer);
        }
    }

    /** What a thread that ended too early has left. */
    private void writeTheRest() {
        for (Consumer<SessionWriter> task = queue.poll(); task != null; task = queue.poll()) {
            run(task);
        }
    }

    /** A writer that could not bring its session to an end lets go of the file all the same. */
    private static void close(SessionWriter writer) {
        try {
            writer.close();
        } catch (RuntimeException | Error e) {
            // The trouble before this one was told; the file reads as interrupted.
        }
    }

    private void join() {
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private void work() {
        while (!(ending && queue.isEmpty())) {
            try {
                Consumer<SessionWriter> task = queue.poll(TICK_MILLIS, TimeUnit.MILLISECONDS);
                run(task == null ? SessionWriter::tick : task);
            } catch (InterruptedException e) {
                trouble(new StoreException(
                        "the recorder was told to stop before the run's end; the run ends with it", e));
            }
        }
    }

    private void run(Consumer<SessionWriter> task) {
        try {
            task.accept(writer);
        } catch (StoreException e) {
            trouble(e);
        } catch (RuntimeException | Error e) {
            dropped.incrementAndGet();
            fallBack(e);
        }
    }

    /** Nobody knows how far the writer came with that entry: it goes back to what is safe in the file. */
    private void fallBack(Throwable mistake) {
        StoreException told;
        try {
            writer.fallBack();
            told = new StoreException(
                    "session file " + writer.file() + ": an entry could not be written (" + Mistake.words(mistake)
                            + "); the run ends, and the session says what it lacks",
                    mistake);
        } catch (RuntimeException | Error again) {
            told = new StoreException("the recorder can no longer write; the run ends", mistake);
        }
        trouble(told);
    }

    private void trouble(StoreException e) {
        if (troubled.compareAndSet(false, true)) {
            try {
                onTrouble.accept(e);
            } catch (RuntimeException | Error deaf) {
                e.addSuppressed(deaf);
            }
        }
    }
}
