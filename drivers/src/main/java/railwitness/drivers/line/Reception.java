package railwitness.drivers.line;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;

/** What has come in over a wire: one thread reads it, another waits for a complete reply until an exact moment. */
final class Reception {
    /** A wire that returns at once with nothing, so many times on end, is looked at more closely. */
    private static final int SUSPICIOUS = 20;

    private static final long AT_ONCE_NANOS = 2_000_000;

    /** No line of an instrument is longer, bytes; what is has no end. */
    static final int LONGEST_LINE = 65_536;

    private final ReentrantLock lock = new ReentrantLock();
    private final Condition changed = lock.newCondition();
    private final Wire wire;
    private final char last;
    private final Thread reader;
    private final Consumer<String> thrownAway;
    private int longest = LONGEST_LINE;
    private boolean flooded;
    private byte[] bytes = new byte[256];
    private int count;
    private int cuts;
    private boolean gone;
    private volatile boolean ended;

    /** Why a wait ended without a reply. */
    enum Why {
        COMPLETE,
        DUE,
        CUT,
        GONE,
        FLOODED
    }

    /** How a wait ended. */
    record End(Optional<byte[]> reply, Why why) {}

    /** @param thrownAway told of every text that comes without being asked for, or too late; must be quick */
    Reception(PortSettings settings, Wire wire, Consumer<String> thrownAway) {
        this.wire = wire;
        this.thrownAway = thrownAway;
        this.last = settings.terminator().equals("\r") ? '\r' : '\n';
        reader = new Thread(this::read, "reader of " + settings.port());
        reader.setDaemon(true);
        reader.start();
    }

    private void read() {
        byte[] chunk = new byte[4096];
        int nothings = 0;
        while (!ended) {
            long begun = System.nanoTime();
            int got = wire.read(chunk);
            if (got > 0) {
                nothings = 0;
                add(chunk, got);
                continue;
            }
            nothings = System.nanoTime() - begun < AT_ONCE_NANOS ? nothings + 1 : 0;
            if (got < 0 || nothings > SUSPICIOUS && !wire.present()) {
                lose();
                return;
            }
            if (nothings > SUSPICIOUS) {
                pause();
            }
        }
    }

    private static void pause() {
        try {
            TimeUnit.MILLISECONDS.sleep(10);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void add(byte[] chunk, int got) {
        lock.lock();
        try {
            if (count + got > longest) {
                flooded = true;
                count = 0;
            }
            if (count + got > bytes.length) {
                bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, count + got));
            }
            System.arraycopy(chunk, 0, bytes, count, got);
            count += got;
            changed.signalAll();
        } finally {
            lock.unlock();
        }
    }

    /** The port has gone. */
    void lose() {
        lock.lock();
        try {
            gone = true;
            changed.signalAll();
        } finally {
            lock.unlock();
        }
    }

    /** Ends every wait that began before. */
    void cut() {
        lock.lock();
        try {
            cuts++;
            changed.signalAll();
        } finally {
            lock.unlock();
        }
    }

    int cuts() {
        lock.lock();
        try {
            return cuts;
        } finally {
            lock.unlock();
        }
    }

    boolean gone() {
        lock.lock();
        try {
            return gone;
        } finally {
            lock.unlock();
        }
    }

    /** Throws away what has come, told as one text; true when there was more than ends of lines. */
    boolean discard() {
        lock.lock();
        try {
            String text = text().strip();
            if (!text.isEmpty()) {
                thrownAway.accept(text);
            }
            boolean any = !text.isEmpty() || flooded;
            count = 0;
            flooded = false;
            return any;
        } finally {
            lock.unlock();
        }
    }

    /** True when what has come ends within a line: its rest may still be on its way. */
    boolean isMidLine() {
        lock.lock();
        try {
            return count > 0 && bytes[count - 1] != '\n' && bytes[count - 1] != '\r';
        } finally {
            lock.unlock();
        }
    }

    /** How many bytes one reply may have from now on. */
    void bound(int bytes) {
        lock.lock();
        try {
            longest = bytes;
        } finally {
            lock.unlock();
        }
    }

    /** True when nothing but ends of lines comes for so long. */
    boolean quiet(long nanos) {
        lock.lock();
        try {
            long until = System.nanoTime() + nanos;
            for (long left = nanos; left > 0 && ends(0, count) == count && !gone; left = until - System.nanoTime()) {
                changed.awaitNanos(left);
            }
            return ends(0, count) == count;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        } finally {
            lock.unlock();
        }
    }

    /** What has come so far, as text. */
    String text() {
        lock.lock();
        try {
            return new String(bytes, 0, count, StandardCharsets.ISO_8859_1);
        } finally {
            lock.unlock();
        }
    }

    /** Waits for a complete reply until the given moment of System.nanoTime. */
    End await(long due, int cutsBefore, Function<Reception, byte[]> complete) {
        lock.lock();
        try {
            while (true) {
                byte[] reply = complete.apply(this);
                if (reply != null) {
                    return new End(Optional.of(reply), Why.COMPLETE);
                }
                if (cuts != cutsBefore) {
                    return new End(Optional.empty(), Why.CUT);
                }
                if (gone) {
                    return new End(Optional.empty(), Why.GONE);
                }
                if (flooded) {
                    return new End(Optional.empty(), Why.FLOODED);
                }
                long left = due - System.nanoTime();
                if (left <= 0) {
                    return new End(Optional.empty(), Why.DUE);
                }
                changed.awaitNanos(left);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return new End(Optional.empty(), Why.CUT);
        } finally {
            lock.unlock();
        }
    }

    /** Takes the first line without its end, or null when none is complete. For {@link #await}. */
    byte[] line() {
        int end = indexOfEnd(0);
        if (end < 0) {
            return null;
        }
        int from = ends(0, end);
        int to = end;
        while (to > from && bytes[to - 1] == '\r') {
            to--;
        }
        return taken(from, to, end);
    }

    /** Takes a block once its terminator has come; what is no block is taken as a line. For {@link #await}. */
    byte[] block() {
        int from = ends(0, count);
        int length = Block.lengthOf(Arrays.copyOfRange(bytes, from, Math.min(count, from + 12)), count - from);
        if (length < 0) {
            return line();
        }
        int end = length > count - from ? -1 : indexOfEnd(from + length);
        return end < 0 ? null : taken(from, from + length, end);
    }

    private int ends(int from, int limit) {
        int at = from;
        while (at < limit && (bytes[at] == '\r' || bytes[at] == '\n')) {
            at++;
        }
        return at;
    }

    /** Passes over lines, which are thrown away, until one is wanted; null when none came. For {@link #await}. */
    byte[] lineThat(Predicate<String> wanted) {
        for (byte[] line = line(); line != null; line = line()) {
            String text = new String(line, StandardCharsets.ISO_8859_1);
            if (wanted.test(text.strip())) {
                return line;
            }
            thrownAway.accept(text);
        }
        return null;
    }

    private int indexOfEnd(int from) {
        for (int i = from; i < count; i++) {
            if (bytes[i] == last) {
                return i;
            }
        }
        return -1;
    }

    private byte[] taken(int from, int to, int end) {
        byte[] reply = Arrays.copyOfRange(bytes, from, to);
        count -= end + 1;
        System.arraycopy(bytes, end + 1, bytes, 0, count);
        return reply;
    }

    /** Ends the reading thread; to be called before the wire is closed. */
    void end() {
        ended = true;
        try {
            reader.join(1000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
