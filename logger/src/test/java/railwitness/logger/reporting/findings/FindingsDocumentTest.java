package railwitness.logger.reporting.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.FigureName;

class FindingsDocumentTest {
    @Test
    void documentDefinesEveryFigureAsTheProgramDoesAndNoOther() throws IOException {
        List<String> wanted = Arrays.stream(FigureName.values())
                .map(name -> "| `" + name.word() + "` | " + (name.perRail() ? "each" : "-") + " | " + name.unit()
                        + " | " + name.definition() + " |")
                .toList();
        List<String> rows = Files.readAllLines(Path.of("docs/findings.md")).stream()
                .filter(line -> line.startsWith("| `"))
                .toList();
        assertThat(rows).isEqualTo(wanted);
    }
}
