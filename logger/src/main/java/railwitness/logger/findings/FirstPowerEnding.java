package railwitness.logger.findings;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.analysis.cause.Ending;
import railwitness.logger.store.EventEntry;

/** Reads back what the event of an ended first power says: with the remote turn-on off, or on. */
final class FirstPowerEnding {
    private static final String STAGE = "power-up";
    private static final Pattern LOW_RAILS = Pattern.compile("rails did not come up \\(([^)]*)\\)");

    private FirstPowerEnding() {}

    /**
     * Empty where it ended for another reason: an instrument that did not answer says nothing of the unit.
     *
     * @param rails how many rails are read
     */
    static Optional<Ending> of(EventEntry event, OptionalDouble lastAmps, int rails) {
        Matcher low = LOW_RAILS.matcher(event.text());
        boolean on = event.text().startsWith("remote on");
        if (low.find()) {
            List<String> names = Arrays.stream(low.group(1).split(",\\s*"))
                    .map(one -> one.split(" ")[0])
                    .toList();
            return Optional.of(new Ending(STAGE, lastAmps.orElse(0), on, names, names.size() < rails));
        }
        boolean off = event.text().startsWith("remote off");
        return lastAmps.isPresent() && (on || off)
                ? Optional.of(new Ending(STAGE, lastAmps.getAsDouble(), on))
                : Optional.empty();
    }
}
