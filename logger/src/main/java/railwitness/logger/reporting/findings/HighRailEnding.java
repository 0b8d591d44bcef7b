package railwitness.logger.reporting.findings;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;

/** Reads back the trip of a rail that rose beyond its limit before any load was drawn. */
final class HighRailEnding {
    private static final String STAGE = "no-load";
    private static final Pattern HIGH_RAIL = Pattern.compile("rail is (-?[0-9.]+) V, allowed is at most");

    private HighRailEnding() {}

    /** Empty where the trip was another, or a load had been drawn before: then the points themselves speak. */
    static Optional<EarlyEnding> of(EventEntry trip, List<StepEntry> steps, Supplier<OptionalDouble> lastAmps) {
        boolean loaded = steps.stream()
                .filter(step -> step.outcome() == StepOutcome.MEASURED)
                .anyMatch(step -> step.loadAmps().values().stream().anyMatch(amps -> amps > 0));
        Matcher high = HIGH_RAIL.matcher(trip.text());
        return !loaded && high.find()
                ? Optional.of(EarlyEnding.tooHigh(STAGE, lastAmps.get().orElse(0), Double.parseDouble(high.group(1))))
                : Optional.empty();
    }
}
