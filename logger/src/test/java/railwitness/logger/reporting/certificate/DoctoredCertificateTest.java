package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdfwriter.ContentStreamWriter;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationFreeText;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import railwitness.logger.recording.store.Verification;

/** Certificates altered as somebody with a PDF editor would, with the digest left as it is. */
@Execution(ExecutionMode.CONCURRENT)
class DoctoredCertificateTest {
    private static final Instant ISSUED = Instant.parse("2026-03-29T08:00:00Z");

    @TempDir
    static Path folder;

    private static final Map<Making, byte[]> AGAIN = new HashMap<>();

    private static Path session;
    private static Path pdf;
    private static Path otherPdf;

    @BeforeAll
    static void certify() {
        session = Rehearsed.session(folder.resolve("a.session"), "", 1, Rehearsed.head("2026-050", false));
        pdf = folder.resolve("a.pdf");
        Certificate.of(
                        session,
                        new Order(
                                Paper.A4,
                                true,
                                Optional.empty(),
                                Optional.of("Wharf workshop"),
                                Optional.of("a boat"),
                                ISSUED))
                .writeTo(pdf);
        Path other = Rehearsed.session(folder.resolve("b.session"), "weak-half", 2, Rehearsed.head("2026-051", false));
        otherPdf = folder.resolve("b.pdf");
        Certificate.of(other, Order.plain(ISSUED)).writeTo(otherPdf);
    }

    /** As {@link PageCheck#of(Path, Path)}, which sets the pages anew each time; here those of one making are set once. */
    private static PageCheck check(Path altered) {
        return PageCheck.of(
                session,
                altered,
                making -> AGAIN.computeIfAbsent(
                        making, how -> Certificate.again(session, how).pdf()));
    }

    private interface Doctor {
        void alter(PDDocument document) throws IOException;
    }

    private static PageCheck after(Doctor doctor) throws IOException {
        Path altered = folder.resolve("altered.pdf");
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            doctor.alter(document);
            document.save(altered.toFile());
        }
        assertThat(Belonging.of(Verification.of(session), PrintedDigest.in(altered)))
                .isEqualTo(Belonging.TOGETHER);
        return check(altered);
    }

    @Test
    void anUntouchedCertificateSaysWhatItsSessionSays() throws Exception {
        PageCheck check = check(pdf);
        assertThat(check.differences()).isEmpty();
        assertThat(check.words()).contains("not compared: workshop, customer, day of issue");
        assertThat(after(document -> {}).differences()).as("saved anew").isEmpty();
    }

    @Test
    void aRenamedSessionStillSaysTheSame() throws Exception {
        Path renamed = Files.copy(session, folder.resolve("renamed.session"));
        assertThat(PageCheck.of(renamed, pdf).differences()).isEmpty();
    }

    @Test
    void aReplacedGlyphInANumberIsFound() throws Exception {
        PageCheck check = after(document -> replaceDigit(document, document.getPage(0)));
        assertThat(check.isSame()).isFalse();
        assertThat(check.differences().get(0)).startsWith("page 1 says '").contains(", not '");
    }

    @Test
    void anotherVerdictWrittenOverIsFound() throws Exception {
        PageCheck check = after(document -> over(document, 0, 40, 730, 300, 25, "Not fit to return"));
        assertThat(check.differences().toString()).contains("page 1 says");
    }

    @Test
    void aWhiteBoxWithAnotherNumberIsFound() throws Exception {
        PageCheck check = after(document -> over(document, 1, 200, 600, 80, 14, "36.99 V"));
        assertThat(check.differences().toString()).contains("page 2 says").contains(", not '");
    }

    @Test
    void aBoxThatOnlyHidesIsFound() throws Exception {
        PageCheck check = after(document -> over(document, 0, 40, 500, 300, 60, ""));
        assertThat(check.differences().toString()).contains("page 1 says the same, but something was added");
    }

    @Test
    void aPictureOfANumberIsFound() throws Exception {
        PageCheck check = after(document -> {
            BufferedImage white = new BufferedImage(60, 12, BufferedImage.TYPE_INT_RGB);
            try (PDPageContentStream content = new PDPageContentStream(
                    document, document.getPage(0), PDPageContentStream.AppendMode.APPEND, true)) {
                content.drawImage(LosslessFactory.createFromImage(document, white), 100, 400);
            }
        });
        assertThat(check.isSame()).isFalse();
    }

    @Test
    void aNotePinnedOverAFigureIsFound() throws Exception {
        PageCheck check = after(document -> {
            PDAnnotationFreeText note = new PDAnnotationFreeText();
            note.setRectangle(new PDRectangle(100, 400, 60, 12));
            note.setContents("36.99 V");
            note.setDefaultAppearance("/Helv 9 Tf 0 g");
            document.getPage(0).getAnnotations().add(note);
        });
        assertThat(check.isSame()).isFalse();
    }

    @Test
    void aDroppedPageIsFound() throws Exception {
        PageCheck check = after(document -> document.removePage(2));
        assertThat(check.differences().get(0)).contains("pages, not");
    }

    @Test
    void aPageOfAnotherCertificateIsFound() throws Exception {
        try (PDDocument other = Loader.loadPDF(otherPdf.toFile())) {
            PageCheck added = after(document -> document.importPage(other.getPage(1)));
            assertThat(added.differences().get(0)).contains("pages, not");
        }
        try (PDDocument other = Loader.loadPDF(otherPdf.toFile())) {
            PageCheck exchanged = after(document -> {
                PDPage foreign = document.importPage(other.getPage(1));
                document.getPages().remove(foreign);
                document.getPages().insertBefore(foreign, document.getPage(1));
                document.removePage(2);
            });
            assertThat(exchanged.differences().toString()).contains("page 2 says");
        }
    }

    @Test
    void pagesInAnotherOrderAreFound() throws Exception {
        PageCheck check = after(document -> {
            PDPage third = document.getPage(2);
            document.getPages().remove(third);
            document.getPages().insertBefore(third, document.getPage(1));
        });
        assertThat(check.isSame()).isFalse();
    }

    /** Whoever takes away how it was made, so that only figures can be compared, does not get a figure through. */
    @Test
    void aCertificateThatDoesNotSayHowItWasMadeIsComparedFigureByFigure() throws Exception {
        Doctor forget = document -> document.getDocumentInformation().setCustomMetadataValue("MadeBy", null);
        PageCheck honest = after(forget);
        assertThat(honest.differences()).isEmpty();
        assertThat(honest.notCompared()).startsWith("everything but the verdict, the figures");
        PageCheck number = after(document -> {
            forget.alter(document);
            replaceInFigure(document);
        });
        assertThat(number.isSame()).isFalse();
        PageCheck dropped = after(document -> {
            forget.alter(document);
            document.removePage(2);
        });
        assertThat(dropped.isSame()).isFalse();
        PageCheck verdict = after(document -> {
            forget.alter(document);
            over(document, 0, 40, 300, 300, 25, "Not fit to return");
        });
        assertThat(verdict.isSame()).isFalse();
    }

    private static void over(PDDocument document, int page, float x, float y, float width, float height, String text)
            throws IOException {
        try (PDPageContentStream content = new PDPageContentStream(
                document, document.getPage(page), PDPageContentStream.AppendMode.APPEND, true, true)) {
            content.setNonStrokingColor(1f, 1f, 1f);
            content.addRect(x, y, width, height);
            content.fill();
            if (!text.isEmpty()) {
                content.setNonStrokingColor(0f, 0f, 0f);
                content.beginText();
                content.setFont(new PDType1Font(Standard14Fonts.FontName.HELVETICA), 9);
                content.newLineAtOffset(x + 2, y + 3);
                content.showText(text);
                content.endText();
            }
        }
    }

    private static List<String> figureLines(PDDocument document) throws IOException {
        return PageLines.page(document, 1).figures().lines();
    }

    private static void replaceInFigure(PDDocument document) throws IOException {
        List<Object> tokens = new PDFStreamParser(document.getPage(0)).parse();
        List<String> before = figureLines(document);
        assertThat(before).hasSizeGreaterThan(2);
        for (int i = 0; i < tokens.size(); i++) {
            if (swapped(tokens.get(i)) != tokens.get(i)) {
                List<Object> changed = new ArrayList<>(tokens);
                changed.set(i, swapped(tokens.get(i)));
                write(document, document.getPage(0), changed);
                List<String> after = figureLines(document);
                if (!after.equals(before)) {
                    return;
                }
            }
        }
        throw new AssertionError("no glyph of the figure was found");
    }

    /** The first two glyphs that differ change places: the text says another number. */
    private static Object swapped(Object token) {
        if (token instanceof COSString string && string.getBytes().length >= 6) {
            byte[] bytes = string.getBytes();
            for (int i = 0; i + 3 < bytes.length; i += 2) {
                if (bytes[i] != bytes[i + 2] || bytes[i + 1] != bytes[i + 3]) {
                    byte[] other = bytes.clone();
                    System.arraycopy(bytes, i, other, i + 2, 2);
                    System.arraycopy(bytes, i + 2, other, i, 2);
                    return new COSString(other);
                }
            }
        }
        return token;
    }

    private static void replaceDigit(PDDocument document, PDPage page) throws IOException {
        List<Object> tokens = new PDFStreamParser(page).parse();
        int at = 0;
        for (int strings = 0; at < tokens.size() && strings < 30; at++) {
            strings += tokens.get(at) instanceof COSString ? 1 : 0;
        }
        while (swapped(tokens.get(at)) == tokens.get(at)) {
            at++;
        }
        tokens.set(at, swapped(tokens.get(at)));
        write(document, page, tokens);
    }

    private static void write(PDDocument document, PDPage page, List<Object> tokens) throws IOException {
        PDStream stream = new PDStream(document);
        try (var out = stream.createOutputStream()) {
            new ContentStreamWriter(out).writeTokens(tokens);
        }
        page.setContents(stream);
    }
}
