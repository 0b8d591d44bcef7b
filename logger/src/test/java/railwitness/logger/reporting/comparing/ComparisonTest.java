package railwitness.logger.reporting.comparing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.StoreException;

class ComparisonTest {
    @TempDir
    Path folder;

    private Path session(String id, String instruments, double ohms) {
        return SmallSession.write(folder.resolve(id + ".session"), id, instruments, ohms);
    }

    private static Change change(Comparison comparison, String label) {
        return comparison.figures().stream()
                .filter(figure -> figure.label().equals(label))
                .findFirst()
                .orElseThrow()
                .changes()
                .get(1)
                .orElseThrow();
    }

    @Test
    void errorsOfTheSameInstrumentCancel() {
        Comparison same = Comparison.of(List.of(session("0801", "-7", 0.6), session("0802", "-7", 0.6)));
        Change change = change(same, "rail voltage as wired, plus");
        assertThat(change.difference().u()).isLessThan(change.apart() / 10);
        assertThat(change.answer()).isEqualTo(Answer.NOT_SHOWN);
    }

    @Test
    void errorsOfOtherInstrumentsDoNot() {
        Comparison others = Comparison.of(List.of(session("0803", "-7", 0.6), session("0804", "-8", 0.6)));
        Change change = change(others, "rail voltage as wired, plus");
        assertThat(change.difference().u()).isGreaterThan(change.apart() * 0.999);
    }

    @Test
    void instrumentsWithoutSerialNumberAreNotTakenForTheSame() {
        Comparison unknown = Comparison.of(List.of(session("0805", "", 0.6), session("0806", "", 0.6)));
        Change change = change(unknown, "rail voltage as wired, plus");
        assertThat(change.difference().u()).isGreaterThan(change.apart() * 0.999);
    }

    @Test
    void smallChangeIsSeenWithTheSameInstrumentsOnly() {
        Path before = session("0807", "-7", 0.600);
        assertThat(change(
                                Comparison.of(List.of(before, session("0808", "-7", 0.602))),
                                "output resistance as wired, plus")
                        .answer())
                .isEqualTo(Answer.REAL);
        assertThat(change(Comparison.of(List.of(before, session("0809", "-8", 0.602))), "rail voltage as wired, plus")
                        .answer())
                .isEqualTo(Answer.NOT_SHOWN);
    }

    @Test
    void aSessionThatIsStillRecordedIsRefused() {
        Path running = folder.resolve("running.session");
        SessionHead head = new SessionHead(
                "running", Instant.parse("2026-03-04T05:06:07Z"), ZoneOffset.UTC, true, "test", "", "u", "", "");
        try (SessionWriter writer = SessionWriter.create(running, head)) {
            writer.event(1, "note", "goes on");
            assertThatThrownBy(() -> Comparison.of(List.of(session("0815", "-7", 0.6), running)))
                    .isInstanceOf(ComparisonException.class)
                    .hasMessageContaining("is being recorded right now; compare it when it has ended");
        }
    }

    @Test
    void oddOneOfEightIsNamed() {
        List<Path> sisters = new ArrayList<>();
        double[] ohms = {0.6, 0.604, 0.598, 0.601, 0.66, 0.603, 0.599, 0.602};
        for (int i = 0; i < ohms.length; i++) {
            sisters.add(session("081" + i, "-7", ohms[i]));
        }
        Comparison comparison = Comparison.of(sisters);
        assertThat(comparison.unlike().keySet()).contains(4);
        assertThat(comparison.unlike().get(4))
                .extracting(chart -> chart.figure().label())
                .contains("output resistance as wired, plus", "rail voltage, minus");
        assertThat(ComparisonText.of(comparison)).contains("E is unlike its sisters (serial 0814):");
        assertThat(Comparison.of(sisters.subList(0, 7)).charts()).isEmpty();
    }

    @Test
    void sessionsThatCannotBeComparedAreRefusedInOneLine() throws Exception {
        Path good = session("0820", "-7", 0.6);
        assertThatThrownBy(() -> Comparison.of(List.of(good)))
                .isInstanceOf(ComparisonException.class)
                .hasMessageContaining("two sessions or more");
        assertThatThrownBy(() -> Comparison.of(List.of(good, good)))
                .isInstanceOf(ComparisonException.class)
                .hasMessageContaining("given twice");
        Path empty = Files.createFile(folder.resolve("empty.session"));
        assertThatThrownBy(() -> Comparison.of(List.of(good, empty)))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("cut short")
                .message()
                .doesNotContain("\n");
        Path foreign = Files.writeString(folder.resolve("foreign.session"), "a,b\n".repeat(100));
        assertThatThrownBy(() -> Comparison.of(List.of(good, foreign))).hasMessageContaining("is not a session");
        byte[] whole = Files.readAllBytes(good);
        Path cut = Files.write(folder.resolve("cut.session"), java.util.Arrays.copyOf(whole, whole.length / 2));
        assertThatThrownBy(() -> Comparison.of(List.of(good, cut))).hasMessageContaining("cut short");
    }

    @Test
    void textAndJsonAreTheSameInEveryLocale() {
        List<Path> files = List.of(session("0830", "-7", 0.6), session("0831", "-7", 0.61));
        Locale before = Locale.getDefault();
        try {
            List<String> texts = new ArrayList<>();
            for (String tag : List.of("en-GB", "de-DE", "ar-EG-u-nu-arab")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                Comparison comparison = Comparison.of(files);
                texts.add(ComparisonText.of(comparison) + ComparisonJson.of(comparison));
            }
            assertThat(texts.get(1)).isEqualTo(texts.get(0));
            assertThat(texts.get(2)).isEqualTo(texts.get(0));
            assertThat(texts.get(0))
                    .contains("output resistance as wired, plus")
                    .contains("\"answer\" : \"real change\"");
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void hostileNameIsShownAsText() {
        Path evil = SmallSession.write(folder.resolve("evil.session"), "0840", "-7", 0.6, "\u001b[2J\u202esnow");
        String text = ComparisonText.of(Comparison.of(List.of(session("0841", "-7", 0.6), evil)));
        assertThat(text).contains("[U+001B][2J[U+202E]snow").doesNotContain("\u001b");
    }

    @Test
    void paperHoldsEveryFigureAsTextWithItsFontsInside() throws Exception {
        Path evil =
                SmallSession.write(folder.resolve("evil2.session"), "0851", "-7", 0.61, "\u001b[2J\u202e\u4e2dsnow");
        Comparison comparison = Comparison.of(List.of(session("0850", "-7", 0.6), evil));
        Path out = folder.resolve("c.pdf");
        ComparisonPdf.write(comparison, out);
        try (PDDocument pdf = Loader.loadPDF(out.toFile())) {
            String text = new PDFTextStripper().getText(pdf);
            comparison.figures().forEach(figure -> assertThat(text).contains(figure.label()));
            assertThat(text)
                    .contains(
                            "Nothing moved by more than matters.",
                            "real, too small to matter",
                            "matters from",
                            "REHEARSAL",
                            "[U+202E]\u4e2dsnow",
                            "page 1 of ");
            for (PDPage page : pdf.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    assertThat(page.getResources().getFont(name).isEmbedded()).isTrue();
                }
            }
        }
        assertThatThrownBy(() -> ComparisonPdf.write(comparison, out)).hasMessageContaining("never written over");
        assertThatThrownBy(() -> ComparisonPdf.write(comparison, folder.resolve("none/c.pdf")))
                .isInstanceOf(ComparisonException.class)
                .hasMessageContaining("is the folder there");
    }
}
