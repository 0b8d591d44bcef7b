package railwitness.logger.findings;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.cause.Ending;
import railwitness.logger.store.EventEntry;

/** Reads back what the event of an ended first power says: with the remote turn-on off, or on. */
final class FirstPowerEnding {
    private FirstPowerEnding() {}

    /** Empty where the current was within its bound: then another part is at fault. */
    static Optional<Ending> of(EventEntry event, OptionalDouble highestAmps) {
        if (highestAmps.isEmpty() || !event.text().contains("the unit draws")) {
            return Optional.empty();
        }
        return Optional.of(
                new Ending("power-up", highestAmps.getAsDouble(), event.text().startsWith("remote on")));
    }
}
