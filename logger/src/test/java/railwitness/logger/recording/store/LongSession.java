package railwitness.logger.recording.store;

import java.nio.file.Path;

/** A long session of eight channels at fifty readings a second, for tables and tests. */
public final class LongSession {
    private LongSession() {}

    /** @param count readings in all */
    public static void record(Path file, long count) {
        BenchNoise noise = new BenchNoise(1);
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            for (long i = 0; i < count; i++) {
                writer.reading(noise.next());
            }
            writer.finish(SessionState.COMPLETE);
        }
    }
}
