package railwitness.logger.reporting.findings;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.analysis.cause.Evidence;
import railwitness.logger.recording.event.SessionEvent;

/** Reads endings out of the sentences of sessions recorded before events had numbers. */
final class EarlierEnding {
    private static final Pattern HIGH_RAIL = Pattern.compile("rail is (-?[0-9.]+) V, allowed is at most");
    private static final Pattern LOW_RAILS = Pattern.compile("rails did not come up \\(([^)]*)\\)");
    private static final Pattern READ = Pattern.compile("the rails read \\(([^)]*)\\)");
    private static final Pattern RAIL = Pattern.compile("^(\\S+) (-?[0-9.]+(?:[eE][-+]?[0-9]+)?) V");

    private EarlierEnding() {}

    /** Where a rail stood that was too high, V; empty where the trip was another. */
    static OptionalDouble highRailVolts(SessionEvent.Earlier trip) {
        Matcher high = HIGH_RAIL.matcher(trip.said());
        return high.find() ? OptionalDouble.of(Double.parseDouble(high.group(1))) : OptionalDouble.empty();
    }

    /** As {@link FirstPowerEnding#of}. */
    static Optional<EarlyEnding> firstPower(SessionEvent.Earlier event, OptionalDouble lastAmps, int rails) {
        return ended(event.said(), lastAmps, rails).map(ending -> ending.with(evidence(event.said())));
    }

    /** Rails, bound and limiting, as the words of first power give them. */
    private static Evidence evidence(String text) {
        Matcher read = READ.matcher(text);
        Matcher low = LOW_RAILS.matcher(text);
        String list = read.find() ? read.group(1) : low.find() ? low.group(1) : "";
        Map<String, Double> volts = new LinkedHashMap<>();
        for (String one : list.split(",\\s*")) {
            Matcher rail = RAIL.matcher(one);
            if (rail.find()) {
                volts.put(rail.group(1), Double.parseDouble(rail.group(2)));
            }
        }
        return new Evidence(
                volts,
                text.contains("not a short on a rail"),
                !text.contains("the design sheet does not say"),
                text.contains("the supply limits its current"));
    }

    private static Optional<EarlyEnding> ended(String text, OptionalDouble lastAmps, int rails) {
        Matcher low = LOW_RAILS.matcher(text);
        boolean on = text.startsWith("remote on");
        if (low.find()) {
            List<String> names = Arrays.stream(low.group(1).split(",\\s*"))
                    .map(one -> one.split(" ")[0])
                    .toList();
            return Optional.of(
                    new EarlyEnding(FirstPowerEnding.STAGE, lastAmps.orElse(0), on, names, names.size() < rails));
        }
        boolean off = text.startsWith("remote off");
        return lastAmps.isPresent() && (on || off)
                ? Optional.of(new EarlyEnding(FirstPowerEnding.STAGE, lastAmps.getAsDouble(), on))
                : Optional.empty();
    }
}
