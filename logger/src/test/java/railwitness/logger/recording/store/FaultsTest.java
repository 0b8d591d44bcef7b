package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;

/** What goes wrong around a session file; each says one clear line. */
class FaultsTest {
    private static final Channel PLUS = Channel.of("plus.voltage");

    @TempDir
    Path folder;

    @BeforeEach
    void openToNobody() throws IOException {
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        try (SessionWriter warm = SessionWriter.create(folder.resolve("warm.session"), Heads.plain())) {
            warm.reading(new Measured(PLUS, 1, 0, 0));
            warm.finish(SessionState.COMPLETE);
        }
        Verification.of(folder.resolve("warm.session"));
    }

    private Path readOnly(Path path, String rights) throws IOException {
        return Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(rights));
    }

    @Test
    void aReadOnlyFolderIsNamed() throws Exception {
        Path closed = readOnly(Files.createDirectory(folder.resolve("closed")), "r-xr-xr-x");
        FileSystemRights.without(
                () -> assertThatThrownBy(() -> SessionWriter.create(closed.resolve("a.session"), Heads.plain()))
                        .isInstanceOf(StoreException.class)
                        .hasMessageContaining("cannot be written"));
        assertThat(closed).isEmptyDirectory();
    }

    @Test
    void anEndedSessionIsReadFromAReadOnlyPlace() throws Exception {
        Path closed = Files.createDirectory(folder.resolve("archive"));
        Path file = closed.resolve("a.session");
        Recording.complete(file, 3);
        readOnly(file, "r--r--r--");
        readOnly(closed, "r-xr-xr-x");
        FileSystemRights.without(() -> assertThat(Verification.of(file).words()).startsWith("intact"));
    }

    @Test
    void anInterruptedSessionIsReadFromAReadOnlyPlaceWithItsLog() throws Exception {
        Path source = folder.resolve("live.session");
        Path closed = Files.createDirectory(folder.resolve("stick"));
        Path file = closed.resolve("live.session");
        try (SessionWriter writer = SessionWriter.create(source, Heads.plain())) {
            new Recording(8).write(writer, 300, 200_000_000L);
            writer.commit();
            for (String tail : new String[] {"", "-wal"}) {
                Files.copy(source.resolveSibling("live.session" + tail), closed.resolve("live.session" + tail));
                readOnly(closed.resolve("live.session" + tail), "r--r--r--");
            }
        }
        readOnly(closed, "r-xr-xr-x");
        FileSystemRights.without(() -> {
            Verification verification = Verification.of(file);
            assertThat(verification.words()).startsWith("intact: 615 readings");
            assertThat(verification.state()).isEqualTo(SessionState.INTERRUPTED);
        });
        assertThat(closed.toFile().list()).hasSize(2);
    }

    @Test
    void aLockedSessionNameIsRefused() throws Exception {
        Path file = folder.resolve("locked.session");
        HeldFile held = HeldFile.take(file);
        assertThatThrownBy(() -> SessionWriter.create(file, Heads.plain()))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("being recorded by another program");
        held.close();
        assertThat(file).doesNotExist();
    }

    @Test
    void aDeletedFileIsToldAndSavedAtTheEnd() throws Exception {
        Path file = folder.resolve("gone.session");
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            new Recording(8).write(writer, 300, 200_000_000L);
            Files.delete(file);
            assertThatThrownBy(writer::commit)
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("moved or deleted")
                    .hasMessageContaining("rescued-gone.session");
            writer.event(61_000_000_000L, "off", "power is off");
            writer.finish(SessionState.STOPPED);
        }
        Verification rescued = Verification.of(folder.resolve("rescued-gone.session"));
        assertThat(rescued.words()).startsWith("intact: 615 readings");
        assertThat(rescued.state()).isEqualTo(SessionState.STOPPED);
    }

    @Test
    void aFullDiskEndsTheRunWithEveryReading() throws Exception {
        Path disk = Files.createDirectory(folder.resolve("disk"));
        assumeThat(run("mount", "-t", "tmpfs", "-o", "size=24m", "tmpfs", disk.toString()))
                .as("a small disk can be mounted only as root")
                .isTrue();
        try {
            fillTheDisk(disk);
        } finally {
            run("umount", "-l", disk.toString());
        }
    }

    private static void fillTheDisk(Path disk) throws IOException {
        Path file = disk.resolve("full.session");
        SessionWriter writer = SessionWriter.create(file, Heads.plain());
        try (var filler = Files.newOutputStream(disk.resolve("filler"))) {
            byte[] chunk = new byte[4096];
            try {
                while (Files.exists(disk)) {
                    filler.write(chunk);
                }
            } catch (IOException e) {
                assertThat(e).hasMessageContaining("No space left");
            }
        } catch (IOException e) {
            assertThat(e).hasMessageContaining("No space left");
        }
        int count = writeUntilFull(writer);
        writer.reading(new Measured(PLUS, 0.5, count * 20_000_000L, count * 20_000_000L));
        writer.event(count * 20_000_000L, "off", "power is off");
        writer.finish(SessionState.TRIPPED);
        Verification verification = Verification.of(file);
        assertThat(verification.words()).startsWith("intact: " + (count + 1) + " readings");
        assertThat(verification.state()).isEqualTo(SessionState.TRIPPED);
    }

    /** Writes until the writer says that the disk is full; returns how many readings went in. */
    private static int writeUntilFull(SessionWriter writer) {
        int count = 0;
        try {
            while (count < 1_000_000) {
                writer.reading(new Measured(PLUS, Math.sin(count), count * 20_000_000L, count * 20_000_000L));
                count++;
                if (count % 1000 == 0) {
                    writer.commit();
                }
            }
        } catch (StoreException e) {
            assertThat(e).hasMessageContaining("the disk is full").hasMessageContaining("safe");
            return count;
        }
        throw new AssertionError("the disk was never full");
    }

    private static boolean run(String... command) throws IOException, InterruptedException {
        return new ProcessBuilder(command).start().waitFor() == 0;
    }

    @Test
    void aMissingFileIsSaid() {
        assertRefused(folder.resolve("none.session"), "is not there");
    }

    @Test
    void anotherKindOfFileIsRefused() throws Exception {
        Path file = Files.writeString(folder.resolve("letter.session"), "Dear lock keeper, ".repeat(20));
        assertRefused(file, "no SQLite file");
    }

    @Test
    void anotherProgramsDatabaseIsRefused() throws Exception {
        Path file = folder.resolve("other.session");
        sql(file, "CREATE TABLE fish (name)");
        assertRefused(file, "another program's");
    }

    @Test
    void aNewerFileIsRefused() throws Exception {
        Path file = folder.resolve("newer.session");
        Recording.complete(file, 3);
        sql(file, "PRAGMA user_version = 2");
        assertRefused(file, "newer version (schema 2; this one reads up to 1)");
    }

    @Test
    void aTruncatedFileIsRefused() throws Exception {
        Path file = folder.resolve("short.session");
        Recording.complete(file, 3);
        byte[] bytes = Files.readAllBytes(file);
        for (int length : new int[] {0, 50, 4096, bytes.length / 2}) {
            assertRefused(Files.write(folder.resolve("cut.session"), Arrays.copyOf(bytes, length)), "cut short");
        }
    }

    private static void assertRefused(Path file, String words) {
        assertThatThrownBy(() -> SessionFile.open(file))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining(words)
                .hasMessageNotContaining("\n");
    }

    private static void sql(Path file, String sql) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void anUnusableNativeFolderIsNamed() throws Exception {
        Child child = Child.run("-Drailwitness.native=" + folder.resolve("nowhere"), NativeProbe.class);
        assertThat(child.output()).contains("cannot be unpacked").contains("-Drailwitness.native=FOLDER");
    }

    @Test
    void theNativeFolderCanBeChosen() throws Exception {
        Path natives = Files.createDirectory(folder.resolve("native"));
        Child child = Child.run("-Djava.io.tmpdir=" + folder.resolve("nowhere"), NativeProbe.class);
        assertThat(child.output()).contains("cannot be unpacked");
        child = Child.run(
                "-Djava.io.tmpdir=" + folder.resolve("nowhere"), "-Drailwitness.native=" + natives, NativeProbe.class);
        assertThat(child.output()).startsWith("opened");
    }

    /** Opens SQLite in a program of its own, as its native part is loaded only once. */
    static final class NativeProbe {
        public static void main(String[] arguments) throws Exception {
            try {
                NativeLibrary.prepare();
                java.sql.DriverManager.getConnection("jdbc:sqlite::memory:").close();
                System.out.println("opened");
            } catch (StoreException e) {
                System.out.println(e.getMessage());
            }
        }
    }
}
