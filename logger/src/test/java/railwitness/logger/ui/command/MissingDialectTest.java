package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MissingDialectTest {
    @TempDir
    Path folder;

    @Test
    void aDialectFileThatIsNotThereIsRefusedWithItsLine() throws Exception {
        String bench = Files.readString(Path.of("../sessions-sample/demo/bench.toml"));
        String missing = folder.resolve("of-our-own.toml").toString();
        Path sheet = Files.writeString(
                folder.resolve("bench.toml"),
                bench.replaceFirst("dialect = \"scpi-1999\"", "dialect = \"" + missing.replace("\\", "/") + "\""));

        Said said = Said.by("check", sheet.toString());

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("bench.toml:", "of-our-own.toml");
        assertThat(said.out()).doesNotContain("in order");
    }
}
