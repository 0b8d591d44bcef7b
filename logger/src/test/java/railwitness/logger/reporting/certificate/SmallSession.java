package railwitness.logger.reporting.certificate;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Waveform;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.TimeSpan;

/** A short session with rows in every table, made up rather than run, so that many copies of it are quickly verified. */
final class SmallSession {
    private static final long SECOND = 1_000_000_000L;

    private SmallSession() {}

    /** @param ended false leaves it interrupted, its last readings not packed yet */
    static Path write(Path file, boolean ended) {
        Random random = new Random(12);
        try (SessionWriter writer = SessionWriter.create(file, Rehearsed.head("2026-060", true))) {
            writer.sheet("design", "design.toml", "name = \"Kingfisher\"\n");
            writer.sheet("bench", "bench.toml", "name = \"wharf\"\n");
            writer.instrument("meter", "meter", "", "", new Identity("a", "b", "c", "d"), "0.02 %");
            for (int second = 1; second <= 150; second++) {
                for (String name : new String[] {"input.current", "plus.voltage", "minus.voltage"}) {
                    long at = second * SECOND + random.nextInt(1000);
                    writer.reading(new Measured(Channel.of(name), 30 + random.nextGaussian(), at, at + 3_000_000));
                }
                if (second % 30 == 0) {
                    others(writer, second * SECOND + SECOND / 2, second);
                    writer.commit();
                }
            }
            if (ended) {
                writer.finish(SessionState.COMPLETE);
            }
        }
        return file;
    }

    private static void others(SessionWriter writer, long at, int second) {
        Channel plus = Channel.of("plus.voltage");
        writer.event(at, "plus load", "load set to " + second + " A");
        writer.exchange(at, "meter", "READ?", "+1.0E", "cut off");
        writer.note(at, "the lock keeper", "fan heard");
        writer.waveform(at, new Waveform(plus, -0.5, 1e-6, new double[] {1, second, 3}));
        writer.reading(new Overload(plus, at, at + 1));
        writer.reading(new Missing(plus, "no answer", at + 2, at + 3));
        writer.wall(at + 4, Rehearsed.START.plusSeconds(3600 + second));
        writer.step(new StepEntry(
                "load-sweep",
                second + " %",
                at - SECOND,
                Optional.of(new TimeSpan(at - SECOND / 2, at)),
                true,
                StepOutcome.MEASURED,
                "",
                OptionalDouble.of(13.8),
                new TreeMap<>(java.util.Map.of("plus", 1.0))));
    }
}
