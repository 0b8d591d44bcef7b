package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import railwitness.drivers.reading.Channel;

/** The recorded sessions of every schema there ever was are read for ever. */
class ForEverTest {
    /** From the module's folder, where Maven runs tests, and from the project's. */
    private static Path samples() {
        Path here = Path.of("sessions-sample");
        return Files.isDirectory(here) ? here : Path.of("..").resolve(here);
    }

    /** Makes the sample of the newest schema anew; only for the day when there is a new one. */
    public static void main(String[] arguments) {
        Recording.complete(samples().resolve("schema-" + Sqlite.SCHEMA + ".session"), 1905);
    }

    @Test
    void everySchemaHasASample() {
        for (int schema = 1; schema <= Sqlite.SCHEMA; schema++) {
            assertThat(samples().resolve("schema-" + schema + ".session")).exists();
        }
    }

    @Test
    void everySampleIsIntactAndReadsAsItWasRecorded() throws Exception {
        try (Stream<Path> files = Files.list(samples())) {
            for (Path file : files.filter(f -> f.getFileName().toString().startsWith("schema-"))
                    .toList()) {
                assertThat(Verification.of(file).words()).startsWith("intact: 3075 readings");
                assertReads(file);
            }
        }
    }

    private static void assertReads(Path file) {
        Channel plus = Channel.of("plus.voltage");
        try (SessionFile session = SessionFile.open(file)) {
            assertThat(session.state()).isEqualTo(SessionState.COMPLETE);
            assertThat(session.head()).isEqualTo(Heads.plain());
            assertThat(session.sheet("design").orElseThrow().text()).isEqualTo("name = \"Kingfisher\"\n");
            assertThat(session.trace(plus, TimeSpan.ALL).count()).isEqualTo(1484);
            assertThat(session.envelope(plus, TimeSpan.ALL, 20).columns()).isEqualTo(20);
            assertThat(session.seal()).isEqualTo("407e4de9b2fbf972dc8a05b11573bf28054decfa47f45f0ba634bd7979133cfe");
        }
    }
}
