package railwitness.logger.reporting.findings;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.safety.interlock.Trip;

/** The trip of a rail that rose beyond its limit before any load was drawn. */
final class HighRailEnding {
    private static final String STAGE = "no-load";

    private HighRailEnding() {}

    /** Empty where the trip was another, or a load had been drawn before: then the points themselves speak. */
    static Optional<EarlyEnding> of(
            EventEntry trip, List<String> rails, List<StepEntry> steps, Supplier<OptionalDouble> lastAmps) {
        boolean loaded = steps.stream()
                .filter(step -> step.outcome() == StepOutcome.MEASURED)
                .anyMatch(step -> step.loadAmps().values().stream().anyMatch(amps -> amps > 0));
        OptionalDouble high = highVolts(trip.event(), rails);
        return !loaded && high.isPresent()
                ? Optional.of(EarlyEnding.tooHigh(STAGE, lastAmps.get().orElse(0), high.getAsDouble()))
                : Optional.empty();
    }

    private static OptionalDouble highVolts(SessionEvent event, List<String> rails) {
        if (event instanceof SessionEvent.Tripped trip) {
            return trip.beyond()
                    .filter(beyond -> Double.isInfinite(beyond.allowed().low()))
                    .filter(beyond -> beyond.channel()
                            .filter(channel -> channel.quantity() == Quantity.VOLTAGE && rails.contains(channel.node()))
                            .isPresent())
                    .map(Trip.Beyond::value)
                    .orElse(OptionalDouble.empty());
        }
        return event instanceof SessionEvent.Earlier earlier
                ? EarlierEnding.highRailVolts(earlier)
                : OptionalDouble.empty();
    }
}
