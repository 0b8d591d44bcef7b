package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;
import railwitness.logger.reporting.comparing.Comparison;
import railwitness.logger.reporting.comparing.ComparisonPdf;

/** Paper that is to be kept, looked at by a validator that shares no line with us: PDF/A-2, level A. */
class KeptPaperTest {
    private static final Instant ISSUED = Instant.parse("2026-03-29T08:00:00Z");

    @TempDir
    static Path folder;

    private static Path found;
    private static Path left;

    @BeforeAll
    static void rehearse() {
        VeraGreenfieldFoundryProvider.initialise();
        found = Rehearsed.session(
                folder.resolve("found.session"), "tired-capacitor", 1, Rehearsed.head("2026-070", true));
        left = Rehearsed.session(
                folder.resolve("left.session"),
                "",
                2,
                Rehearsed.head(
                        "2026-071",
                        true,
                        "\u4e0a\u6d77 \u039a\u03b1\u03c1 \u043b\u043e \u0642\u0627\u0631\u0628",
                        "0412"));
    }

    private static List<String> faults(Path pdf) throws Exception {
        try (PDFAParser parser = Foundries.defaultInstance().createParser(pdf.toFile(), PDFAFlavour.PDFA_2_A)) {
            PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_2_A, false);
            ValidationResult result = validator.validate(parser);
            return result.getTestAssertions().stream()
                    .map(one -> one.getRuleId().getClause() + ": " + one.getMessage() + " at "
                            + one.getLocation().getContext())
                    .distinct()
                    .limit(20)
                    .toList();
        }
    }

    @Test
    void aCertificateWithNamesOfManyScriptsCanBeKept() throws Exception {
        Path pdf = folder.resolve("left.pdf");
        Certificate.of(
                        left,
                        new Order(
                                Paper.A4,
                                true,
                                Optional.of(found),
                                Optional.of("Wharf workshop"),
                                Optional.of("\u0642\u0627\u0631\u0628 \u05e1\u05e4\u05d9\u05e0\u05d4"),
                                ISSUED))
                .writeTo(pdf);
        assertThat(faults(pdf)).isEmpty();
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(document.getDocumentInformation().getTitle()).startsWith("Test certificate 2026-071-");
            assertThat(document.getDocumentCatalog().getDocumentOutline().hasChildren())
                    .isTrue();
            assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
        }
    }

    @Test
    void aComparisonCanBeKept() throws Exception {
        Path pdf = folder.resolve("compared.pdf");
        ComparisonPdf.write(
                Comparison.of(List.of(found, left)),
                pdf,
                new ComparisonPdf.Wish(Paper.LETTER, ISSUED, Optional.of("Wharf workshop")));
        assertThat(faults(pdf)).isEmpty();
    }
}
