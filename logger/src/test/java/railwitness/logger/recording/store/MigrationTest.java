package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MigrationTest {
    @TempDir
    Path folder;

    @Test
    void aFileOfTheNewestSchemaIsLeftAlone() {
        Path file = folder.resolve("a.session");
        Recording.complete(file, 3);
        assertThat(new Migration().bringUp(file)).isEmpty();
    }

    @Test
    void theCopyIsMadeFirstAndStaysAsItWas() throws Exception {
        Path file = folder.resolve("b.session");
        Recording.complete(file, 3);
        Path copy = to3("ALTER TABLE note ADD COLUMN place TEXT").bringUp(file).orElseThrow();
        assertThat(version(file)).isEqualTo(3);
        assertThat(copy).hasFileName("schema-1-b.session");
        assertThat(Verification.of(copy).isIntact()).isTrue();
    }

    @Test
    void aStepThatFailsChangesNothing() throws Exception {
        Path file = folder.resolve("c.session");
        Recording.complete(file, 3);
        assertThatThrownBy(
                        () -> to3("ALTER TABLE nonsense ADD COLUMN place TEXT").bringUp(file))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("it is unchanged")
                .hasMessageContaining("schema-1-c.session");
        assertThat(version(file)).isEqualTo(1);
        assertThat(Verification.of(file).isIntact()).isTrue();
    }

    @Test
    void aSessionBeingRecordedIsNotTouched() {
        Path file = folder.resolve("d.session");
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            assertThatThrownBy(() -> to3("SELECT 1").bringUp(writer.file()))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("is being recorded");
        }
    }

    private static Migration to3(String second) {
        return new Migration(
                new TreeMap<>(Map.of(1, List.of("CREATE TABLE place (seq INTEGER)"), 2, List.of(second))), 3);
    }

    private static long version(Path file) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            return OpenedFile.pragma(connection, "user_version");
        }
    }
}
