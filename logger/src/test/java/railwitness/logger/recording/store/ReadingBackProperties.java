package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;

class ReadingBackProperties {
    private static final long SEED = 4711;

    @TempDir
    Path folder;

    @Test
    void everyReadingComesBackHoweverTheCommitsFell() {
        for (int round = 0; round < 4; round++) {
            Path file = folder.resolve(round + ".session");
            Recording recording = new Recording(SEED + round);
            try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
                recording.write(writer, 3000, 40_000_000L);
                assertAllThere(file, recording, writer);
                if (round % 2 == 0) {
                    writer.finish(SessionState.COMPLETE);
                }
            }
            assertAllThere(file, recording, null);
            assertThat(Verification.of(file).words()).startsWith("intact");
        }
    }

    private static void assertAllThere(Path file, Recording recording, SessionWriter writer) {
        if (writer != null) {
            writer.commit();
        }
        try (SessionFile session = SessionFile.open(file)) {
            recording.readings.forEach((channel, given) -> {
                List<Reading> back = new ArrayList<>();
                session.readings(channel, TimeSpan.ALL, back::add);
                assertThat(back).isEqualTo(given);
                assertThat(session.lastValues()).containsEntry(channel, given.get(given.size() - 1));
            });
        }
    }

    @Test
    void theEnvelopeAgreesWithTheReadingsAtAnyZoom() {
        Path file = folder.resolve("zoom.session");
        Recording recording = new Recording(SEED);
        Random random = new Random(SEED);
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            recording.write(writer, 4000, 250_000_000L);
            writer.commit();
            try (SessionFile session = SessionFile.open(file)) {
                for (int i = 0; i < 60; i++) {
                    long from = random.nextInt(1000) * 1_000_000_000L + random.nextInt(1_000_000_000);
                    long to = from + 1 + (long) (Math.pow(random.nextDouble(), 3) * 1e12);
                    int columns = 1 + random.nextInt(40);
                    assertDrawnRight(session, recording, new TimeSpan(from, to), columns);
                }
                assertDrawnRight(session, recording, TimeSpan.ALL, 7);
            }
        }
    }

    private static void assertDrawnRight(SessionFile session, Recording recording, TimeSpan span, int columns) {
        recording.readings.forEach((channel, given) -> {
            Envelope drawn = session.envelope(channel, span, columns);
            long[] edges = drawn.edgeNanos();
            assertThat(drawn.columns()).isLessThanOrEqualTo(columns);
            for (int c = 0; c < drawn.columns(); c++) {
                assertThat(edges[c]).isLessThan(edges[c + 1]);
                assertColumn(given, drawn, c, channel + " " + span + " column " + c + " of " + columns);
            }
        });
    }

    private static void assertColumn(List<Reading> given, Envelope drawn, int c, String where) {
        TimeSpan column = new TimeSpan(drawn.edgeNanos()[c], drawn.edgeNanos()[c + 1]);
        List<Reading> inside =
                given.stream().filter(r -> column.holds(r.repliedNanos())).toList();
        double[] values = inside.stream()
                .filter(Measured.class::isInstance)
                .mapToDouble(r -> ((Measured) r).value())
                .toArray();
        assertThat(drawn.readings()[c]).as(where).isEqualTo(inside.size());
        assertThat(drawn.measured()[c]).as(where).isEqualTo(values.length);
        if (values.length > 0) {
            assertThat(drawn.lowest()[c])
                    .as(where)
                    .isEqualTo(java.util.Arrays.stream(values).min().getAsDouble());
            assertThat(drawn.highest()[c])
                    .as(where)
                    .isEqualTo(java.util.Arrays.stream(values).max().getAsDouble());
            double mean = java.util.Arrays.stream(values).average().getAsDouble();
            assertThat(Math.abs(drawn.mean()[c] - mean)).as(where).isLessThan(1e-9);
        }
    }

    @Test
    void readersSeeEveryCommittedReadingWhileMinutesArePacked() throws Exception {
        Path file = folder.resolve("live.session");
        Channel channel = Channel.of("plus.voltage");
        int count = 60_000;
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            Thread recorder = new Thread(() -> {
                for (int i = 0; i < count; i++) {
                    writer.reading(new Measured(channel, i, i * 20_000_000L, i * 20_000_000L + 1));
                    if (i % 700 == 0) {
                        writer.commit();
                    }
                }
                writer.commit();
            });
            recorder.start();
            try (SessionFile session = SessionFile.open(file)) {
                int seen = 0;
                while (seen < count) {
                    double[] values = session.trace(channel, TimeSpan.ALL).values();
                    assertThat(values.length).isGreaterThanOrEqualTo(seen);
                    for (int i = 0; i < values.length; i++) {
                        assertThat(values[i]).isEqualTo(i);
                    }
                    seen = values.length;
                }
            }
            recorder.join();
        }
    }
}
