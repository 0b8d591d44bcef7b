package railwitness.logger.recording.store;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Reading;

/** A made-up recording with everything in it, for tests that read it back. */
final class Recording {
    final Map<Channel, List<Reading>> readings = new LinkedHashMap<>();
    private final Random random;
    private long nanos;

    Recording(long seed) {
        random = new Random(seed);
    }

    /** Writes so many rounds of readings at some distance, committing now and then. */
    void write(SessionWriter writer, int rounds, long roundNanos) {
        writer.sheet("design", "kingfisher.toml", "name = \"Kingfisher\"\n");
        writer.sheet("plan", "return-test.toml", "[plan]\n");
        writer.instrument("dmm", "meter", "", "", new Identity("0", "0", "0", "0"), "0.02 %");
        for (int i = 0; i < rounds; i++) {
            nanos += roundNanos;
            for (String name : List.of("input.current", "plus.voltage", "heatsink.temperature")) {
                if (!name.startsWith("heat") || i % 20 == 0) {
                    Reading reading = reading(Channel.of(name));
                    readings.computeIfAbsent(reading.channel(), c -> new ArrayList<>())
                            .add(reading);
                    writer.reading(reading);
                }
            }
            other(writer, i);
        }
    }

    private void other(SessionWriter writer, int i) {
        if (i % 500 == 77) {
            writer.event(nanos, "step", "load step " + i);
            writer.exchange(nanos, "dmm", "READ?", "+1.0E", "cut off");
            writer.note(nanos, "the lock keeper", "fan heard");
        }
        if (random.nextInt(200) == 0) {
            writer.commit();
        }
    }

    private Reading reading(Channel channel) {
        long asked = nanos + random.nextInt(50_000);
        long replied = asked + 3_000_000 + random.nextInt(200_000);
        return switch (random.nextInt(100)) {
            case 0 -> new Overload(channel, asked, replied);
            case 1 -> new Missing(channel, "no answer in " + random.nextInt(3) + " s", asked, replied);
            default -> new Measured(channel, value(channel), asked, replied);
        };
    }

    private double value(Channel channel) {
        double noisy = Math.rint(random.nextGaussian() * 40) / 1e4;
        return channel.node().equals("input") ? (0.05 + noisy) / 0.00987 : 35.12 + noisy;
    }

    /** Makes a session of about five minutes and leaves it complete. */
    static Recording complete(Path file, long seed) {
        Recording recording = new Recording(seed);
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            recording.write(writer, 1500, 200_000_000L);
            writer.finish(SessionState.COMPLETE);
        }
        return recording;
    }
}
