package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.List;

/**
 * How a step is held.
 *
 * @param rules what ends, interrupts or guards it
 * @param cycle parts that follow each other over and over; empty where the load is constant
 */
public record Holding(HoldRules rules, List<CyclePart> cycle) {
    public Holding {
        cycle = List.copyOf(cycle);
    }

    /** The part that is due so long after the begin, counted from 0; the cycle must not be empty. */
    public int partAt(Duration since) {
        long whole = cycle.stream().mapToLong(part -> part.length().toNanos()).sum();
        long at = since.toNanos() % whole;
        int part = 0;
        while (at >= cycle.get(part).length().toNanos()) {
            at -= cycle.get(part).length().toNanos();
            part++;
        }
        return part;
    }
}
