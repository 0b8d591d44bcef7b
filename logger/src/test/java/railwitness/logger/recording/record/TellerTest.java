package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.logger.recording.event.SessionEvent;

/** A program of the person's own, and the status file. */
@Timeout(30)
class TellerTest {
    @TempDir
    private Path folder;

    private Path program(String text) throws IOException {
        assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "needs a shell to write a program in");
        Path file = folder.resolve("told");
        Files.writeString(file, "#!/bin/sh\n" + text + "\n");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwx------"));
        return file;
    }

    @Test
    void tripRunsTheProgramWithReadingsInItsEnvironment() throws IOException {
        Path out = folder.resolve("out.txt");
        Path program =
                program("echo \"$RAILWITNESS_KIND|$RAILWITNESS_TEXT|$RAILWITNESS_PLUS_VOLTAGE\" >> '" + out + "'");
        List<String> trouble = new CopyOnWriteArrayList<>();
        try (Teller teller = new Teller(program, folder.resolve("a.session"), Duration.ofSeconds(5), trouble::add)) {
            teller.heard(new Measured(Channel.of("plus.voltage"), 36.9, 1, 2));
            teller.happened(10, new SessionEvent.Earlier("began", "not told"));
            teller.happened(12, new SessionEvent.Earlier("trip", "too hot; $(rm -rf /) `x`"));
            teller.happened(13, new SessionEvent.Earlier("off", "output off"));
        }
        assertThat(trouble).isEmpty();
        assertThat(Files.readAllLines(out))
                .containsExactly("trip|too hot; $(rm -rf /) `x`|36.9000", "end|output off|36.9000");
    }

    @Test
    void programThatHangsIsEndedAndHoldsNothingUp() throws IOException {
        Path program = program("sleep 60");
        List<String> trouble = new CopyOnWriteArrayList<>();
        long begun = System.nanoTime();
        try (Teller teller = new Teller(program, folder.resolve("a.session"), Duration.ofMillis(300), trouble::add)) {
            teller.happened(1, new SessionEvent.Earlier("trip", "x"));
            assertThat(System.nanoTime() - begun).isLessThan(2_000_000_000L);
        }
        assertThat(trouble).anyMatch(words -> words.contains("took longer"));
    }

    @Test
    void statusFileIsWholeAndSaysHowItStands() throws IOException {
        Path status = folder.resolve("status.json");
        StatusFile file = new StatusFile(
                status, folder.resolve("a.session"), Duration.ofSeconds(5), () -> Instant.EPOCH, words -> {});
        file.heard(new Measured(Channel.of("plus.voltage"), 36.9, 1, 2));
        file.happened(3, new SessionEvent.Earlier("off", "output off"));
        assertThat(Files.readString(status)).contains("\"over\" : true", "\"plus.voltage\" : 36.9");
        try (var all = Files.list(folder)) {
            assertThat(Set.copyOf(all.toList())).containsExactly(status);
        }
    }
}
