package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.TimeSpan;
import railwitness.logger.reporting.findings.FindingsText;
import railwitness.logger.reporting.findings.SessionFindings;

/** A session, intact in itself, in which every text that a person or an instrument gave is a megabyte, or acts. */
@Timeout(value = 60, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
class LongNamesTest {
    private static final int MEGABYTE = 1_000_000;
    private static final String ACTS = "\u001b[2J\u202esnow\u2066\u0007\u0085\u200f\ufeff";
    private static final long SECOND = 1_000_000_000L;

    @TempDir
    Path folder;

    private Path session(String text) {
        Path file = folder.resolve("named.session");
        SessionHead head = new SessionHead(
                "1" + text,
                Instant.parse("2026-03-04T05:06:07Z"),
                ZoneOffset.UTC,
                false,
                "0.1 " + text,
                text,
                text,
                text,
                text);
        Sheets demo = Sheets.demo();
        try (SessionWriter writer = SessionWriter.create(file, head)) {
            writer.sheet("design", text + ".toml", demo.design().text());
            writer.sheet("bench", text, demo.bench().text());
            writer.sheet("plan", text, demo.plan().text());
            writer.instrument(text, text, text, text, new Identity(text, text, text, text), text);
            for (int i = 0; i < 3; i++) {
                step(writer, (1 + 10 * i) * SECOND, text);
            }
            writer.finish(SessionState.COMPLETE);
        }
        return file;
    }

    private static void step(SessionWriter writer, long at, String text) {
        for (int i = 0; i < 5; i++) {
            for (String channel : List.of("input.voltage", "input.current", "plus.voltage", "plus.current")) {
                long asked = at + i * SECOND / 2;
                writer.reading(new Measured(Channel.of(channel), 10 + i * 1e-4, asked, asked + 1_000_000));
            }
        }
        writer.reading(new Missing(Channel.of("minus.voltage"), text, at + 3 * SECOND, at + 3 * SECOND + 1));
        writer.event(at + 3 * SECOND, "trip", text);
        writer.event(at + 3 * SECOND, text, text);
        writer.note(at + 3 * SECOND, text, text);
        writer.exchange(at + 3 * SECOND, text, text, text, text);
        writer.step(new StepEntry(
                text,
                text,
                at,
                Optional.of(new TimeSpan(at, at + 4 * SECOND)),
                true,
                StepOutcome.MEASURED,
                text,
                OptionalDouble.of(13.8),
                new TreeMap<>()));
    }

    private Path certificate(Path session) {
        Path out = folder.resolve("named.pdf");
        Certificate.of(session, Order.plain(Instant.EPOCH)).writeTo(out);
        return out;
    }

    private static long ownNanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    @Test
    void megabytesOfTextMakeNoLongCertificate() throws Exception {
        Path session = session("n".repeat(MEGABYTE) + " " + ACTS);
        long began = ownNanos();
        Path out = certificate(session);
        assertThat((ownNanos() - began) / 1e9).as("seconds of the processor").isLessThan(10);
        try (PDDocument document = Loader.loadPDF(out.toFile())) {
            assertThat(document.getNumberOfPages()).isLessThan(40);
        }
        assertThat(out.toFile().length()).isLessThan(5 * MEGABYTE);
        assertThat(PageCheck.of(session, out).differences()).isEmpty();
    }

    @Test
    void megabytesOfTextMakeNoLongFindings() {
        Path session = session("m ".repeat(MEGABYTE / 2) + ACTS);
        long began = ownNanos();
        String text = FindingsText.of(SessionFindings.of(session));
        assertThat((ownNanos() - began) / 1e9).as("seconds of the processor").isLessThan(10);
        assertThat(text).hasSizeLessThan(200_000).contains("more characters").satisfies(LongNamesTest::nothingActs);
    }

    @Test
    void nothingInAnyNameActsOnThePagesOrInTheDocumentInformation() throws Exception {
        Path out = certificate(session("Heron " + ACTS));
        assertThat(PdfText.all(out)).contains("[U+202E]snow").satisfies(LongNamesTest::nothingActs);
        try (PDDocument document = Loader.loadPDF(out.toFile())) {
            PDDocumentInformation information = document.getDocumentInformation();
            Set<String> keys = information.getMetadataKeys();
            assertThat(keys).contains("Title", "Subject", "Creator", Certificate.SESSION_KEY);
            for (String key : keys) {
                Object value = information.getPropertyStringValue(key);
                nothingActs(key + ": " + value);
            }
            assertThat(information.getTitle()).contains("[U+001B]", "[U+202E]");
            nothingActs(String.valueOf(document.getDocumentCatalog().getLanguage()));
            nothingActs(new String(document.getDocumentCatalog().getMetadata().toByteArray(), StandardCharsets.UTF_8)
                    .replace("\uFEFF", "") // the packet's own mark of its encoding
                    .replace("\t", ""));
        }
    }

    private static void nothingActs(String text) {
        assertThat(text.codePoints()
                        .filter(c -> c != '\n'
                                && c != '\r'
                                && (Character.getType(c) == Character.CONTROL
                                        || Character.getType(c) == Character.FORMAT)))
                .as(text.substring(0, Math.min(80, text.length())))
                .isEmpty();
    }

    /** A title is cut where it is no title any more; the session is still known as its own. */
    @Test
    void aCertificateOfALongNamedSessionIsReplacedByItsOwnOnly() throws Exception {
        Path session = session("n".repeat(5_000));
        Path out = certificate(session);
        Certificate.of(session, Order.plain(Instant.EPOCH)).writeTo(out);
        try (PDDocument document = Loader.loadPDF(out.toFile())) {
            assertThat(document.getDocumentInformation().getTitle())
                    .hasSizeLessThan(400)
                    .contains("nnn\u2026-");
        }
    }
}
