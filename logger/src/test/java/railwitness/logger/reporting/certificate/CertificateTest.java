package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.store.SessionFile;

/** Certificates of rehearsed sessions, read back as anybody would. */
class CertificateTest {
    private static final Order ORDER = Order.plain(Instant.parse("2026-03-29T08:00:00Z"));
    private static final int SEED = 1;

    @TempDir
    static Path folder;

    private static final Map<Path, Certificate> READ = new HashMap<>();

    private static Path sound;
    private static Path tired;
    private static Path certificate;

    @BeforeAll
    static void rehearse() {
        sound = Rehearsed.session(folder.resolve("sound.session"), "", SEED, Rehearsed.head("2026-032", true));
        tired = Rehearsed.session(
                folder.resolve("tired.session"), "tired-capacitor", SEED, Rehearsed.head("2026-031", false));
        certificate = folder.resolve("sound.pdf");
        of(sound, ORDER).writeTo(certificate);
    }

    /** A session is read once; what differs between tests is the order. */
    private static Certificate of(Path session, Order order) {
        return READ.computeIfAbsent(session, file -> Certificate.of(file, ORDER))
                .ordered(order);
    }

    private static Path write(Path session, Order order, String name) {
        Path out = folder.resolve(name);
        of(session, order).writeTo(out);
        return out;
    }

    private static Order order(Paper paper, boolean causes, Optional<Path> before) {
        return new Order(paper, causes, before, Optional.of("Wharf workshop"), Optional.of("a boat"), ORDER.issued());
    }

    @Test
    void firstPageSumsUp() {
        assertThat(PdfText.pages(certificate).get(0))
                .contains("Test certificate", "No. 2026-032-", "issue 1", "issued 2026-03-29")
                .contains("Work done: both filter capacitors of the", "It meets all 12 requirements")
                .contains("Fit to return", "12 of 12 requirements met", "guard band of 95 %")
                .contains("Saloon amplifier supply", "Serial", "0412", "as left")
                .contains("13.8 V nominal", "at its terminals at full", "22 \u00b0C", "25 kHz, ripple at 50 kHz")
                .contains("2026-03-28 10:30 to 10:32 UTC+01:00, complete")
                .contains("average efficiency", "\u2265 86 %", "2.95 to 3.05", "\u2264 60 mV rms", "\u2264 0.8 \u03a9")
                .contains("share of the limit", "within U of the limit", "not allowed")
                .contains("fan off, amplifier disconnected", "None out of the ordinary")
                .contains("V at the most stood between the rails in this session", "codes come")
                .contains("the lock keeper", "tested", "authorised", "place, date", "not stated");
    }

    @Test
    void laterPagesHoldTheWholeReport() {
        assertThat(PdfText.all(certificate))
                .contains("Figures", "Not found, and remarks", "Operating points", "Pictures", "Method")
                .contains(
                        "Decision rule",
                        "ILAC-G8:09/2019",
                        "Instruments",
                        "2026-05-11",
                        "shunt of input",
                        "\u00b10.1 %")
                .contains("Identification", "Deviations and events", "Cautions", "Records", "End of certificate")
                .contains("load sweep, 25 % again", "input meter", "slope of the rail against the input terminals")
                .contains("SHA-256 of the design sheet", "made by railwitness")
                .doesNotContain("Probable causes");
    }

    /** {@code .ci/renew-samples} writes the kept text anew. */
    @Test
    void textIsTheKeptOneInThreeLocales() throws IOException {
        Path kept = Path.of("src/test/resources/railwitness/logger/reporting/certificate/sound.txt");
        if ("write".equals(System.getProperty("railwitness.samples"))) {
            Files.createDirectories(kept.getParent());
            Files.writeString(kept, lasting(certificate));
        }
        String text = Files.readString(kept).replace("\r\n", "\n");
        Locale before = Locale.getDefault();
        try {
            for (String tag : List.of("en-GB", "de-DE", "ar-EG-u-nu-arab")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                Path out = folder.resolve(tag + ".pdf");
                Certificate.of(sound, ORDER).writeTo(out);
                assertThat(lasting(out))
                        .as("text in %s; .ci/renew-samples makes %s anew", tag, kept)
                        .isEqualTo(text);
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    /** All text but the digests and the build, which are others with every program. */
    private static String lasting(Path pdf) {
        return PdfText.all(pdf)
                .replace("\r\n", "\n")
                .replaceAll("\\b[0-9a-f]{8,64}\\b", "#")
                .replaceAll("2026-032-[0-9A-F]{6}", "2026-032-#")
                .replaceAll("made by railwitness .*", "made by railwitness #.");
    }

    @Test
    void everyPageSaysWhichOfHowManyItIs() {
        List<String> pages = PdfText.pages(certificate);
        assertThat(pages).hasSizeGreaterThan(3);
        for (int i = 0; i < pages.size(); i++) {
            assertThat(pages.get(i)).contains("Page " + (i + 1) + " of " + pages.size());
        }
    }

    @Test
    void everyPageCarriesTheDigest() {
        String seal = seal(sound);
        assertThat(seal).hasSize(64);
        assertThat(PdfText.pages(certificate))
                .allSatisfy(page -> assertThat(Digest.printedIn(page)).contains(seal));
        assertThat(PrintedDigest.in(certificate).informed()).contains(seal);
        assertThat(PrintedDigest.in(certificate).sessionId()).contains("2026-032");
    }

    private static String seal(Path session) {
        try (SessionFile file = SessionFile.open(session)) {
            return file.seal();
        }
    }

    @Test
    void rehearsalIsMarkedOnEveryPageAndARealSessionOnNone() {
        List<String> pages = PdfText.pages(certificate);
        assertThat(pages.get(0)).contains("no real unit was tested");
        assertThat(pages.subList(1, pages.size()))
                .allSatisfy(page -> assertThat(page).contains("REHEARSAL"));
        Path real = BareSession.write(folder.resolve("real.session"));
        assertThat(PdfText.all(write(real, ORDER, "real.pdf"))).doesNotContain("REHEARSAL", "no real unit");
    }

    /** Whatever command recorded it: readings of instruments that call themselves virtual are no test of a real unit. */
    @Test
    void virtualInstrumentsMakeARehearsal() {
        assertThat(PdfText.pages(write(tired, ORDER, "virtual.pdf")).get(0)).contains("no real unit was tested");
    }

    @Test
    void bothPapersHaveTheirSize() throws IOException {
        for (Paper paper : Paper.values()) {
            Path out = write(sound, order(paper, true, Optional.empty()), paper + ".pdf");
            try (PDDocument document = Loader.loadPDF(out.toFile())) {
                for (PDPage page : document.getPages()) {
                    assertThat(page.getMediaBox().getWidth()).isEqualTo(paper.width());
                    assertThat(page.getMediaBox().getHeight()).isEqualTo(paper.height());
                }
            }
            assertThat(PdfText.pages(out).get(0)).contains("Wharf workshop", "a boat", "place, date");
        }
    }

    @Test
    void allFontsAreEmbeddedAndNoPictureIsPixels() throws IOException {
        try (PDDocument document = Loader.loadPDF(certificate.toFile())) {
            for (PDPage page : document.getPages()) {
                look(page.getResources());
            }
        }
    }

    private static void look(PDResources resources) throws IOException {
        for (COSName name : resources.getFontNames()) {
            PDFont font = resources.getFont(name);
            assertThat(font.isEmbedded()).as(font.getName()).isTrue();
        }
        for (COSName name : resources.getXObjectNames()) {
            PDXObject object = resources.getXObject(name);
            assertThat(object).isInstanceOf(PDFormXObject.class);
            PDResources inside = ((PDFormXObject) object).getResources();
            if (inside != null) {
                look(inside);
            }
        }
    }

    @Test
    void picturesAreLetteredInText() {
        assertThat(PdfText.all(certificate))
                .contains("Rails against load, V", "Efficiency against load, %", "lowest allowed 86 %", "predicted");
        assertThat(PdfText.all(certificate)).contains("Rails against input at 50 % load", "Loss against load, W");
    }

    @Test
    void unfitUnitIsCalledSoWithItsCause() {
        Path out = write(tired, order(Paper.A4, true, Optional.empty()), "tired.pdf");
        assertThat(PdfText.pages(out).get(0))
                .contains("Not fit to return", "11 of 12 requirements met", "In this test the ripple of the");
        assertThat(PdfText.all(out))
                .contains("Probable causes", "capacitor of this rail", "Check next:", "fail:", "outside the limit");
    }

    @Test
    void retestCitesTheSessionBeforeIt() {
        Path out = write(sound, order(Paper.A4, false, Optional.of(tired)), "retest.pdf");
        assertThat(PdfText.pages(out).get(0)).contains("session 2026-031, as left, not fit", "As found");
        assertThat(PdfText.all(out)).contains("This is the retest of session 2026-031");
    }

    @Test
    void sessionOfAnotherUnitIsNotCited() {
        Path other = Rehearsed.session(
                folder.resolve("other.session"),
                "",
                SEED,
                Rehearsed.head("2026-040", true, "Saloon amplifier", "0413"));
        assertThatThrownBy(() -> of(sound, order(Paper.A4, false, Optional.of(other))))
                .isInstanceOf(CertificateException.class)
                .hasMessageContaining("serial '0413', not '0412'");
        assertThatThrownBy(() -> of(sound, order(Paper.A4, false, Optional.of(sound))))
                .hasMessageContaining("is this very session");
    }

    @Test
    void ownCertificateIsReplacedAndAnyOtherFileLeftAlone() throws IOException {
        Path out = write(sound, ORDER, "twice.pdf");
        write(sound, ORDER, "twice.pdf");
        assertThat(PdfText.pages(out)).isNotEmpty();
        assertThatThrownBy(() -> of(tired, ORDER).writeTo(out))
                .hasMessageContaining("is the certificate of another session (2026-032)");
        Path letter = Files.writeString(folder.resolve("letter.pdf"), "dear skipper");
        assertThatThrownBy(() -> of(sound, ORDER).writeTo(letter))
                .hasMessageContaining("is there already and is no certificate");
        assertThat(letter).hasContent("dear skipper");
    }

    @Test
    void missingFolderIsNamed() {
        assertThatThrownBy(() -> of(sound, ORDER).writeTo(folder.resolve("nowhere/c.pdf")))
                .hasMessageContaining("nowhere: there is no such folder");
    }

    @Test
    void hostileNamesStayHarmless() {
        String name = "Supply \u202Etxt.exe\u0000\u0007\n\u200F \u4e2d\u6587 " + "very".repeat(900) + " end";
        Path session = Rehearsed.session(
                folder.resolve("hostile.session"),
                "",
                SEED,
                Rehearsed.head("x\u001b[31m1", true, name, "=HYPERLINK(1)"));
        Path out = write(session, ORDER, "hostile.pdf");
        List<String> pages = PdfText.pages(out);
        String all = String.join("", pages);
        assertThat(all).contains("Supply [U+202E]txt.exe[U+0000 U+0007]", "[U+200F]", "\u4e2d\u6587");
        assertThat(all.codePoints().filter(c -> c < ' ' && c != '\n' && c != '\r'))
                .isEmpty();
        assertThat(pages.get(0)).contains("place, date", "Page 1 of ");
        assertThat(pages.size()).isLessThanOrEqualTo(PdfText.pages(certificate).size() + 2);
    }

    @Test
    void cutOffSessionIsRefused() throws IOException {
        Path empty = Files.createFile(folder.resolve("empty.session"));
        assertThatThrownBy(() -> Certificate.of(empty, ORDER)).hasMessageContaining("empty.session");
    }
}
