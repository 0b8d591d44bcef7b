package railwitness.logger.findings;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.cause.Ending;
import railwitness.logger.store.EventEntry;

/** Reads back what the event of an ended first power says: with the remote turn-on off, or on. */
final class FirstPowerEnding {
    private FirstPowerEnding() {}

    /** Empty where first power ended for want of readings or because an instrument refused. */
    static Optional<Ending> of(EventEntry event, OptionalDouble highestAmps) {
        boolean on = event.text().startsWith("remote on");
        boolean off = event.text().startsWith("remote off");
        return highestAmps.isPresent() && (on || off)
                ? Optional.of(new Ending("power-up", highestAmps.getAsDouble(), on))
                : Optional.empty();
    }
}
