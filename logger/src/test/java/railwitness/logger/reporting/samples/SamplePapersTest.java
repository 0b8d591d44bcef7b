package railwitness.logger.reporting.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.reporting.certificate.Certificate;
import railwitness.logger.reporting.certificate.Order;
import railwitness.logger.reporting.certificate.Paper;
import railwitness.logger.reporting.comparing.Comparison;
import railwitness.logger.reporting.comparing.ComparisonJson;
import railwitness.logger.reporting.comparing.ComparisonPdf;
import railwitness.logger.reporting.comparing.ComparisonText;
import railwitness.logger.reporting.findings.FindingsJson;
import railwitness.logger.reporting.findings.FindingsText;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * Findings, certificates and comparisons of the recorded sessions say what the program says today: their text is compared,
 * not their bytes. Those of the long stories are only written, since they take minutes. {@code -Drailwitness.samples=write} writes them anew, which {@code .ci/renew-samples} does.
 */
class SamplePapersTest {
    private static final Path SAMPLES = Path.of("../sessions-sample");
    private static final Instant ISSUED = Instant.parse("2026-11-27T08:00:00Z");
    private static final boolean WRITE = "write".equals(System.getProperty("railwitness.samples"));

    @TempDir
    Path folder;

    private interface Making {
        void into(Path file) throws Exception;
    }

    private void same(String name, Making making) throws Exception {
        Path made = folder.resolve(name.replace('/', '-'));
        making.into(made);
        Path kept = SAMPLES.resolve(name);
        if (WRITE) {
            Files.copy(made, kept, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        }
        assertThat(text(kept))
                .as("%s is stale; .ci/renew-samples makes it anew", kept)
                .isEqualTo(text(made));
    }

    private static String text(Path file) throws IOException {
        if (!file.toString().endsWith(".pdf")) {
            return Files.readString(file).replace("\r\n", "\n");
        }
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }

    private static Path at(String name) {
        return SAMPLES.resolve(name);
    }

    private static List<Path> sessions(String story) throws IOException {
        try (Stream<Path> files = Files.list(at(story))) {
            return files.filter(file -> file.toString().endsWith(".session"))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void findings() throws Exception {
        List<Path> all = new ArrayList<>();
        for (String story : WRITE ? List.of("repair", "sisters", "burn-in", "toroid") : List.of("repair")) {
            all.addAll(sessions(story));
        }
        for (Path session : all) {
            SessionFindings findings = SessionFindings.of(session, true);
            String plain =
                    SAMPLES.relativize(session).toString().replace('\\', '/').replaceFirst("\\.session$", "");
            same(plain + ".findings.txt", file -> write(file, FindingsText.of(findings, false)));
            same(plain + ".findings.json", file -> write(file, FindingsJson.of(findings)));
        }
    }

    private static void write(Path file, String text) throws IOException {
        Files.write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    private static Order order(boolean causes, Optional<Path> before) {
        return new Order(Paper.A4, causes, before, Optional.of("Wharf workshop"), Optional.empty(), ISSUED);
    }

    @Test
    void certificates() throws Exception {
        same("repair/as-found.pdf", file -> Certificate.of(at("repair/as-found.session"), order(true, Optional.empty()))
                .writeTo(file));
        same("repair/as-left.pdf", file -> Certificate.of(
                        at("repair/as-left.session"), order(false, Optional.of(at("repair/as-found.session"))))
                .writeTo(file));
        for (String longer : WRITE ? List.of("burn-in/burn-in", "toroid/rewound") : List.<String>of()) {
            same(longer + ".pdf", file -> Certificate.of(at(longer + ".session"), order(false, Optional.empty()))
                    .writeTo(file));
        }
    }

    @Test
    void comparisons() throws Exception {
        compared("repair", List.of(at("repair/as-found.session"), at("repair/as-left.session")));
        if (WRITE) {
            compared("sisters", sessions("sisters"));
        }
    }

    private void compared(String story, List<Path> sessions) throws Exception {
        Comparison comparison = Comparison.of(sessions);
        same(story + "/comparison.txt", file -> write(file, ComparisonText.of(comparison)));
        same(story + "/comparison.json", file -> write(file, ComparisonJson.of(comparison)));
        same(
                story + "/comparison.pdf",
                file -> ComparisonPdf.write(
                        comparison, file, new ComparisonPdf.Wish(Paper.A4, ISSUED, Optional.of("Wharf workshop"))));
    }
}
