package railwitness.logger.recording.record;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.reading.Missing;

/** Which instruments' adapters were pulled out, and when they came back. */
final class Replugged {
    private final Map<String, Long> goneSince = new HashMap<>();

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

    private static boolean away(PollResult pollResult) {
        return pollResult.readings().stream()
                .anyMatch(reading -> reading instanceof Missing missing && missing.isUnplugged());
    }
}
