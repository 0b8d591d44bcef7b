package railwitness.logger.reporting.certificate;

import java.nio.file.Path;
import java.util.Random;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;

/** A session of a real instrument without any sheet, so that certificates of it are quickly set. */
final class BareSession {
    private static final long SECOND = 1_000_000_000L;
    private static final long SEED = 12;

    private BareSession() {}

    static Path write(Path file) {
        Random random = new Random(SEED);
        try (SessionWriter writer = SessionWriter.create(file, Rehearsed.head("2026-060", false))) {
            writer.instrument("meter", "meter", "", "", new Identity("a", "b", "c", "d"), "0.02 %");
            for (int second = 1; second <= 90; second++) {
                long at = second * SECOND;
                writer.reading(
                        new Measured(Channel.of("plus.voltage"), 36 + random.nextGaussian() / 100, at, at + 3_000_000));
            }
            writer.finish(SessionState.COMPLETE);
        }
        return file;
    }
}
