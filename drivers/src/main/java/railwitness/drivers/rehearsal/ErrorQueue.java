package railwitness.drivers.rehearsal;

import java.util.ArrayDeque;
import java.util.Deque;
import railwitness.drivers.scpi.ErrorEntry;
import railwitness.drivers.scpi.StandardEvent;

/** First in, first out; when it is full its last entry becomes -350. Feeds the standard event status register. */
final class ErrorQueue {
    private static final int CAPACITY = 20;
    private final Deque<ErrorEntry> entries = new ArrayDeque<>();
    private int events = StandardEvent.POWER_ON.weight();

    void add(RefusedCommand refusal) {
        note(event(refusal.number()));
        if (entries.size() == CAPACITY) {
            entries.removeLast();
            entries.add(new ErrorEntry(-350, "Queue overflow", ""));
        } else {
            entries.add(new ErrorEntry(refusal.number(), refusal.getMessage(), refusal.detail()));
        }
    }

    private static StandardEvent event(int number) {
        return switch (number / -100) {
            case 1 -> StandardEvent.COMMAND_ERROR;
            case 2 -> StandardEvent.EXECUTION_ERROR;
            case 4 -> StandardEvent.QUERY_ERROR;
            default -> StandardEvent.DEVICE_ERROR;
        };
    }

    void note(StandardEvent event) {
        events |= event.weight();
    }

    /** Takes the oldest entry, or the one that says there is none. */
    String next() {
        ErrorEntry entry = entries.poll();
        return (entry == null ? new ErrorEntry(0, "No error", "") : entry).reply();
    }

    boolean isEmpty() {
        return entries.isEmpty();
    }

    int size() {
        return entries.size();
    }

    /** Reads and clears the standard event status register. */
    int takeEvents() {
        int taken = events;
        events = 0;
        return taken;
    }

    void clear() {
        entries.clear();
        events = 0;
    }
}
