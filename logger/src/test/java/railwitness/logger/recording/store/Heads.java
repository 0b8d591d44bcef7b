package railwitness.logger.recording.store;

import java.time.Instant;
import java.time.ZoneId;

/** Session heads for tests. */
final class Heads {
    private Heads() {}

    static SessionHead plain() {
        return new SessionHead(
                "lock-12",
                Instant.parse("2026-03-28T09:30:00.123456789Z"),
                ZoneId.of("Europe/Berlin"),
                true,
                "0.1.0",
                "the lock keeper",
                "Kingfisher step-up supply",
                "NB-0042",
                "repaired");
    }
}
