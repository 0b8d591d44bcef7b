package railwitness.logger.recording.store;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A step of the plan as it was done, written when it has ended.
 *
 * @param stage name of its stage
 * @param step name of the step
 * @param beginNanos when its set points were sent, ns
 * @param average over which its readings are averaged; empty when none was reached
 * @param settled whether the unit had settled before the average began
 * @param outcome how it ended
 * @param reason why, in words; empty when measured
 * @param inputVolts set point of the supply, V; empty when the step had none
 * @param loadAmps set point of the load on each rail, A; a rail not named had none
 */
public record StepEntry(
        String stage,
        String step,
        long beginNanos,
        Optional<TimeSpan> average,
        boolean settled,
        StepOutcome outcome,
        String reason,
        OptionalDouble inputVolts,
        SortedMap<String, Double> loadAmps)
        implements Entry {
    public StepEntry {
        loadAmps = Collections.unmodifiableSortedMap(new TreeMap<>((Map<String, Double>) loadAmps));
        if (outcome == StepOutcome.MEASURED && average.isEmpty()) {
            throw new IllegalArgumentException("step '" + step + "' is measured and must say over which span");
        }
    }

    /** The same step, whose average is given up. */
    public StepEntry notReached(String why) {
        return new StepEntry(
                stage, step, beginNanos, Optional.empty(), settled, StepOutcome.NOT_REACHED, why, inputVolts, loadAmps);
    }
}
