package railwitness.logger.reporting.findings;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.analysis.cause.Evidence;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.store.EventEntry;
import railwitness.safety.interlock.Trip;

/** The trip of an input current beyond what standby may take: the unit was fed and not turned on. */
final class StandbyTripEnding {
    private static final String STAGE = "standby";

    /** The limit in force may be higher than the sheet's by what a meter is off there, A; other limits are far higher. */
    private static final double LARGEST_SLACK_AMPS = 0.5;

    private StandbyTripEnding() {}

    /**
     * Empty where the trip was another, or the sheet gives no limit for standby.
     *
     * @param standbyAmps what the sheet allows, A
     */
    static Optional<EarlyEnding> of(EventEntry trip, OptionalDouble standbyAmps) {
        return standbyAmps.isPresent() && trip.event() instanceof SessionEvent.Tripped tripped
                ? tripped.beyond()
                        .filter(beyond -> isStandby(beyond, standbyAmps.getAsDouble()))
                        .map(beyond ->
                                new EarlyEnding(STAGE, beyond.value().orElseThrow(), false).with(Evidence.none()))
                : Optional.empty();
    }

    private static boolean isStandby(Trip.Beyond beyond, double standbyAmps) {
        double limit = beyond.allowed().high();
        return beyond.value().isPresent()
                && beyond.value().getAsDouble() > limit
                && limit >= standbyAmps
                && limit <= standbyAmps + LARGEST_SLACK_AMPS
                && beyond.channel()
                        .filter(channel -> channel.quantity() == Quantity.CURRENT
                                && channel.node().equals("input"))
                        .isPresent();
    }
}
