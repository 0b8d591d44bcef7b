package railwitness.logger.recording.store;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/** The readings of one channel that are not yet packed: the running minute, and minutes that wait to be packed. */
final class HotChannel {
    private final int id;
    private final Deque<Minute> over = new ArrayDeque<>();
    private final Deque<Minute> spare = new ArrayDeque<>();
    private Minute running = new Minute();

    HotChannel(int id) {
        this.id = id;
    }

    /** Number of the channel's record. */
    int id() {
        return id;
    }

    /** Adds a reading; true when the minute before it is now over. */
    boolean add(long seq, long requestedNanos, long repliedNanos, int kind, long payload) {
        boolean next = running.isOverAt(repliedNanos);
        if (next) {
            endMinute();
        }
        running.add(seq, requestedNanos, repliedNanos, kind, payload);
        return next;
    }

    /** Ends the running minute, if it holds anything. */
    void endMinute() {
        if (running.columns().size() > 0) {
            over.add(running);
            running = spare.isEmpty() ? new Minute() : spare.poll();
        }
    }

    /** True when minutes wait that are better packed at once: no row of them is in the file, or they pile up. */
    boolean packsAtOnce() {
        return over.size() > 1 || !over.isEmpty() && over.peek().committed() == 0;
    }

    int waiting() {
        return over.size();
    }

    /** The oldest minute that waits; hand it back with {@link #reuse}. */
    Minute takeOldest() {
        return over.poll();
    }

    void reuse(Minute minute) {
        minute.clear();
        spare.add(minute);
    }

    /** All minutes whose newest readings may not be in the file yet. */
    List<Minute> unpacked() {
        List<Minute> all = new ArrayList<>(over);
        all.add(running);
        return all;
    }
}
