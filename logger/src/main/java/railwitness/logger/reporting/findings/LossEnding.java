package railwitness.logger.reporting.findings;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.safety.interlock.Trip;

/** The trip of a loss that came with the first load and is beyond what resistance or slow switches could take of it. */
final class LossEnding {
    /** A loss of at least this share of what the loads take (common practice, no source). */
    private static final double OF_THE_LOADS = 0.5;

    private LossEnding() {}

    /**
     * Empty where the trip was another, or a loaded step was measured before: then the points themselves speak.
     *
     * @param volts of the rails as last read
     * @param amps of the input as last read
     */
    static Optional<EarlyEnding> of(
            EventEntry trip,
            List<StepEntry> steps,
            Supplier<Map<String, Double>> volts,
            Supplier<OptionalDouble> amps) {
        if (steps.isEmpty() || !(trip.event() instanceof SessionEvent.Tripped tripped)) {
            return Optional.empty();
        }
        StepEntry last = steps.get(steps.size() - 1);
        boolean idleWasWell = steps.stream()
                .anyMatch(step ->
                        step.outcome() == StepOutcome.MEASURED && step.stage().equals("no-load"));
        boolean loadedBefore = steps.stream().anyMatch(step -> step.outcome() == StepOutcome.MEASURED && loaded(step));
        OptionalDouble lost = tripped.beyond().map(LossEnding::watts).orElse(OptionalDouble.empty());
        if (lost.isEmpty() || !idleWasWell || loadedBefore || !loaded(last)) {
            return Optional.empty();
        }
        Map<String, Double> rails = volts.get();
        double taken = last.loadAmps().entrySet().stream()
                .mapToDouble(load -> load.getValue() * Math.abs(rails.getOrDefault(load.getKey(), 0.0)))
                .sum();
        return taken > 0 && lost.getAsDouble() > OF_THE_LOADS * taken
                ? Optional.of(EarlyEnding.lostUnderLoad(
                        last.stage(), lost.getAsDouble(), amps.get().orElse(0), rails))
                : Optional.empty();
    }

    private static boolean loaded(StepEntry step) {
        return step.loadAmps().values().stream().anyMatch(amps -> amps > 0);
    }

    /** Only the loss is watched in watts, and of no one channel. */
    private static OptionalDouble watts(Trip.Beyond beyond) {
        return beyond.channel().isEmpty() && beyond.unit().equals("W") ? beyond.value() : OptionalDouble.empty();
    }
}
