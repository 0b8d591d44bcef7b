package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.reporting.manual.ManualPdf;

/** The manual on paper has every heading of the documents, and nothing of their mark-up. */
class ManualPaperTest {
    @TempDir
    Path folder;

    @Test
    void everyHeadingStandsOnPaper() throws Exception {
        Path docs = Path.of("docs");
        Path out = folder.resolve("manual.pdf");
        ManualPdf.write(docs, out, Instant.parse("2026-03-29T08:00:00Z"));
        String text = PdfText.all(out).replaceAll("\\s+", " ");
        for (String name : List.of("window.md", "first-hour.md", "burn-in.md", "toroid.md")) {
            Files.readAllLines(docs.resolve(name)).stream()
                    .filter(line -> line.startsWith("## "))
                    .map(line -> line.substring(3).replace("`", "").strip())
                    .forEach(heading -> assertThat(text).as(name).contains(heading));
        }
        assertThat(text).doesNotContain("<a id", "](", "| --- |", "```");
    }
}
