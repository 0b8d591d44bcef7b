package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.TimeSpan;

/**
 * The stretches over which one load was held: one, or more where the run was interrupted and continued.
 *
 * @param name of the hold, such as {@code 75 %}
 * @param spans in the order of time, not overlapping
 */
public record HoldStretch(String name, List<TimeSpan> spans) {
    private static final Set<EventKind> ENDINGS =
            EnumSet.of(EventKind.TRIP, EventKind.STOP, EventKind.OFF, EventKind.CONTINUED, EventKind.NO_POWER);

    public HoldStretch {
        spans = List.copyOf(spans);
    }

    /** The holds of a session, the longest first. */
    public static List<HoldStretch> all(List<StepEntry> steps, List<EventEntry> events, long lastNanos) {
        Map<String, List<TimeSpan>> holds = new LinkedHashMap<>();
        for (int i = 0; i < steps.size(); i++) {
            StepEntry step = steps.get(i);
            if (step.stage().equals("hold")) {
                long to = end(step, steps, events, lastNanos);
                if (to > step.beginNanos()) {
                    join(holds.computeIfAbsent(name(step), any -> new ArrayList<>()), step.beginNanos(), to);
                }
            }
        }
        return holds.entrySet().stream()
                .map(entry -> new HoldStretch(entry.getKey(), entry.getValue()))
                .sorted(java.util.Comparator.comparingLong(HoldStretch::nanos).reversed())
                .toList();
    }

    private static String name(StepEntry step) {
        return name(step.step());
    }

    /** The hold to which a step of that name belongs. */
    static String name(String step) {
        return step.replaceAll(" (begin|end|again)\\b.*$", "");
    }

    private static void join(List<TimeSpan> spans, long from, long to) {
        if (!spans.isEmpty() && spans.get(spans.size() - 1).toNanos() >= from) {
            TimeSpan last = spans.remove(spans.size() - 1);
            spans.add(new TimeSpan(last.fromNanos(), Math.max(last.toNanos(), to)));
        } else {
            spans.add(new TimeSpan(from, to));
        }
    }

    /** The first of: the hold's last average ends, another stage begins, the output goes off, the session's last record. */
    private static long end(StepEntry step, List<StepEntry> steps, List<EventEntry> events, long lastNanos) {
        long end = lastNanos;
        for (StepEntry other : steps) {
            boolean later = other.beginNanos() > step.beginNanos();
            if (later && !(other.stage().equals("hold") && name(other).equals(name(step)))) {
                end = Math.min(end, other.beginNanos());
            }
        }
        for (EventEntry event : events) {
            if (event.nanos() > step.beginNanos()
                    && ENDINGS.contains(event.event().kind())) {
                end = Math.min(end, event.nanos());
            }
        }
        for (StepEntry other : steps) {
            boolean last = other.stage().equals("hold")
                    && name(other).equals(name(step))
                    && other.step().endsWith(" end")
                    && other.average().isPresent();
            if (last) {
                end = Math.min(end, other.average().get().toNanos());
            }
        }
        return end;
    }

    /**
     * The stretches in which its cycle ran: from the end of the average before it, at the constant load, to the last whole
     * cycle. What was read at the constant load before and after belongs to no cycle.
     */
    HoldStretch cycling(List<StepEntry> steps, List<EventEntry> events) {
        return new HoldStretch(
                name, spans.stream().map(span -> cycling(span, steps, events)).toList());
    }

    private TimeSpan cycling(TimeSpan span, List<StepEntry> steps, List<EventEntry> events) {
        long from = steps.stream()
                .filter(step -> step.stage().equals("hold")
                        && name(step).equals(name)
                        && !step.step().endsWith(" end"))
                .flatMap(step -> step.average().stream())
                .mapToLong(TimeSpan::toNanos)
                .filter(nanos -> nanos >= span.fromNanos() && nanos < span.toNanos())
                .max()
                .orElse(span.fromNanos());
        long to = events.stream()
                .filter(event -> event.event().kind() == EventKind.CYCLES)
                .mapToLong(EventEntry::nanos)
                .filter(nanos -> nanos > from && nanos < span.toNanos())
                .min()
                .orElse(span.toNanos());
        return new TimeSpan(from, to);
    }

    /** Held in all, ns. */
    public long nanos() {
        return spans.stream()
                .mapToLong(span -> span.toNanos() - span.fromNanos())
                .sum();
    }

    boolean holds(double seconds) {
        return spans.stream().anyMatch(span -> seconds * 1e9 >= span.fromNanos() && seconds * 1e9 < span.toNanos());
    }

    /** Begins of all but the first, s. */
    double[] breaks() {
        return spans.stream()
                .skip(1)
                .mapToDouble(span -> span.fromNanos() / 1e9)
                .toArray();
    }
}
