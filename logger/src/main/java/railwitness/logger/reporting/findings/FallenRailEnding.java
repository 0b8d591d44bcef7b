package railwitness.logger.reporting.findings;

import java.util.List;
import java.util.Optional;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.StepEntry;
import railwitness.safety.interlock.Trip;

/** The trip of a rail that fell to next to nothing while it was loaded. */
final class FallenRailEnding {
    /** Below this share of what it must keep a rail has not sagged, it has gone (common practice, no source). */
    private static final double GONE = 0.5;

    private FallenRailEnding() {}

    /** Empty where the trip was another, or nothing was loaded. */
    static Optional<EarlyEnding> of(EventEntry trip, List<String> rails, List<StepEntry> steps) {
        if (steps.isEmpty() || !(trip.event() instanceof SessionEvent.Tripped tripped)) {
            return Optional.empty();
        }
        StepEntry last = steps.get(steps.size() - 1);
        boolean loaded = last.loadAmps().values().stream().anyMatch(amps -> amps > 0);
        return tripped.beyond()
                .filter(beyond -> loaded && gone(beyond, rails))
                .map(beyond -> EarlyEnding.fellUnderLoad(
                        last.stage(),
                        beyond.channel().orElseThrow().node(),
                        beyond.value().orElseThrow()));
    }

    private static boolean gone(Trip.Beyond beyond, List<String> rails) {
        return beyond.value().isPresent()
                && beyond.allowed().low() > 0
                && Math.abs(beyond.value().getAsDouble())
                        < GONE * beyond.allowed().low()
                && beyond.channel()
                        .filter(channel -> channel.quantity() == Quantity.VOLTAGE && rails.contains(channel.node()))
                        .isPresent();
    }
}
