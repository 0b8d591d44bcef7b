package railwitness.logger.recording.record;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.reading.Missing;

/** Which instruments' adapters were pulled out, and when they came back. */
final class Replugged {
    private final Map<String, Long> goneSince = new TreeMap<>();

    /** In words that this instrument's port has just gone; empty while it is there, or was known to be gone. */
    Optional<String> gone(PollResult pollResult, long nowNanos) {
        return away(pollResult) && goneSince.putIfAbsent(pollResult.instrument(), nowNanos) == null
                ? Optional.of(pollResult.instrument()
                        + ": its port has gone (an adapter pulled out?); it is looked for twice a second")
                : Optional.empty();
    }

    /** In words that it has just come back; empty otherwise. */
    Optional<String> back(PollResult pollResult, long nowNanos) {
        if (away(pollResult)) {
            return Optional.empty();
        }
        return Optional.ofNullable(goneSince.remove(pollResult.instrument()))
                .map(since -> String.format(
                        Locale.ROOT,
                        "%s is there again after %.1f s without readings",
                        pollResult.instrument(),
                        (nowNanos - since) / 1e9));
    }

    /** Whether any is away now. */
    boolean any() {
        return !goneSince.isEmpty();
    }

    /** Since when this one is away, ns; empty while it is there. */
    OptionalLong since(String instrument) {
        Long since = goneSince.get(instrument);
        return since == null ? OptionalLong.empty() : OptionalLong.of(since);
    }

    /** In words who is away: the plus meter, the input meter. */
    String names() {
        return String.join(", ", goneSince.keySet());
    }

    private static boolean away(PollResult pollResult) {
        return pollResult.readings().stream()
                .anyMatch(reading -> reading instanceof Missing missing && missing.isUnplugged());
    }
}
