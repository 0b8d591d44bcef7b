package railwitness.logger.reporting.exporting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.reading.Waveform;
import railwitness.logger.recording.importing.TableForm;
import railwitness.logger.recording.importing.TableImport;
import railwitness.logger.recording.importing.TableStart;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.recording.store.TimeSpan;
import railwitness.logger.reporting.comparing.SmallSession;
import railwitness.logger.reporting.findings.FindingsJson;
import railwitness.logger.reporting.findings.SessionFindings;

class SessionExportTest {
    private static final List<String> GOLDEN = List.of(
            "readings.csv", "points.csv", "figures.csv", "steps.csv", "events.csv", "session.csv", "instruments.csv");

    @TempDir
    Path folder;

    private Path session() {
        return SmallSession.write(folder.resolve("a.session"), "0901", "-7", 0.6);
    }

    private Path export(Path session, String name) {
        Path out = folder.resolve(name);
        new SessionExport(session, out).write((share, readings) -> {});
        return out;
    }

    private static Path golden() {
        Path here = Path.of("src/test/resources/railwitness/logger/reporting/exporting");
        return Files.isDirectory(Path.of("src")) ? here : Path.of("logger").resolve(here);
    }

    /** Writes the golden tables anew; only for the day when a format has changed on purpose. */
    public static void main(String[] arguments) throws IOException {
        Path work = Files.createTempDirectory("golden");
        Path out = work.resolve("out");
        new SessionExport(SmallSession.write(work.resolve("a.session"), "0901", "-7", 0.6), out).write((s, r) -> {});
        Files.createDirectories(golden());
        for (String name : GOLDEN) {
            Files.write(golden().resolve(name), Files.readAllBytes(out.resolve(name)));
        }
    }

    @Test
    void tablesAreTheGoldenOnesInEveryLocale() throws Exception {
        Path session = session();
        Locale before = Locale.getDefault();
        try {
            for (String tag : List.of("en-GB", "de-DE", "ar-EG-u-nu-arab")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                Path out = export(session, "out-" + tag);
                for (String name : GOLDEN) {
                    if (!name.equals("session.csv")) {
                        assertThat(Files.readString(out.resolve(name)))
                                .as(name + " in " + tag)
                                .isEqualTo(Files.readString(golden().resolve(name)));
                    }
                }
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void readingsComeBackExactlyThroughImport() throws Exception {
        Path session = session();
        Path out = export(session, "out");
        Path again = imported(out, "again.session");
        assertThat(readings(again)).isEqualTo(readings(session));
        assertThat(findings(again, "points")).isEqualTo(findings(session, "points"));
        assertThat(findings(again, "figures")).isEqualTo(findings(session, "figures"));
        try (SessionFile file = SessionFile.open(again)) {
            assertThat(file.head().rehearsal()).isTrue();
            assertThat(file.head().startedWall()).isEqualTo(Instant.parse("2026-03-04T05:06:07Z"));
        }
    }

    private Path imported(Path out, String name) {
        Path table = out.resolve("readings.csv");
        TableStart start = TableStart.of(table, TableForm.USUAL);
        Path made = folder.resolve(name);
        SessionWriter writer = SessionWriter.create(
                made,
                new SessionHead(
                        "b", start.wall().orElseThrow(), ZoneOffset.UTC, start.rehearsal(), "test", "", "u", "", ""));
        try (SessionFile file = SessionFile.open(folder.resolve("a.session"))) {
            file.sheets().forEach(writer::add);
        }
        TableImport.into(writer, table, TableForm.USUAL, start.wall());
        writer.finish(SessionState.COMPLETE);
        return made;
    }

    private static List<Reading> readings(Path session) {
        List<Reading> all = new ArrayList<>();
        try (SessionFile file = SessionFile.open(session)) {
            file.channels().stream().sorted().forEach(channel -> file.readings(channel, TimeSpan.ALL, all::add));
        }
        return all;
    }

    private static String findings(Path session, String part) throws IOException {
        return new com.fasterxml.jackson.databind.ObjectMapper()
                .readTree(FindingsJson.of(SessionFindings.of(session)))
                .get(part)
                .toString();
    }

    @Test
    void overloadsSilencesAndFormulasAreWrittenAsWhatTheyWere() throws Exception {
        Path out = export(session(), "out");
        assertThat(Files.readString(out.resolve("readings.csv")))
                .contains(",overload,")
                .contains(",missing: no answer in 1 s,");
        assertThat(Files.readString(out.resolve("events.csv"))).contains(",\"'=1+1 is shown");
    }

    @Test
    void sheetsAreAsTheyWere() throws Exception {
        Path session = session();
        Path out = export(session, "out");
        try (SessionFile file = SessionFile.open(session)) {
            file.sheets().forEach(sheet -> assertThat(out.resolve("sheets").resolve(sheet.fileName()))
                    .hasContent(sheet.text()));
        }
    }

    @Test
    void sheetCannotLeadOutOfTheFolder() throws Exception {
        Path evil = folder.resolve("evil.session");
        SessionWriter writer = SessionWriter.create(
                evil, new SessionHead("e", Instant.EPOCH, ZoneOffset.UTC, false, "test", "", "u", "", ""));
        writer.sheet("design", "../../escaped.toml", "x = 1\n");
        writer.waveform(5, new Waveform(Channel.of("plus.ripple"), -1e-6, 1e-6, new double[] {0.1, -0.2}));
        writer.finish(SessionState.COMPLETE);
        Path out = export(evil, "out");
        assertThat(folder.resolve("../escaped.toml")).doesNotExist();
        assertThat(out.resolve("sheets/sheet.toml")).hasContent("x = 1\n");
        assertThat(out.resolve("no-findings.txt")).exists();
        assertThat(Files.readAllLines(out.resolve("waveforms.csv")))
                .contains("1,1970-01-01T00:00:00.000000005Z,0.000000005,plus.ripple,V,-1E-6,0.1");
    }

    @Test
    void nothingIsLeftOfAStoppedExport() throws Exception {
        SessionExport export = new SessionExport(session(), folder.resolve("out"));
        Thread stopper = new Thread(export::stop);
        stopper.start();
        while (stopper.getState() != Thread.State.TIMED_WAITING) {
            Thread.onSpinWait();
        }
        assertThatThrownBy(() -> export.write((share, readings) -> {}))
                .isInstanceOf(ExportException.class)
                .hasMessageContaining("stopped");
        stopper.join();
        assertThat(names()).containsExactly("a.session");
    }

    private List<String> names() throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void whatCannotBeDoneIsRefusedInOneLine() throws Exception {
        Path session = session();
        Path taken = Files.createDirectory(folder.resolve("taken"));
        Files.writeString(taken.resolve("mine.txt"), "keep");
        assertThatThrownBy(() -> export(session, "taken")).hasMessageContaining("never written over");
        assertThatThrownBy(() -> export(session, "nowhere/out")).hasMessageContaining("there is no folder");
        byte[] whole = Files.readAllBytes(session);
        Path cut = Files.write(folder.resolve("cut.session"), java.util.Arrays.copyOf(whole, 20_000));
        assertThatThrownBy(() -> export(cut, "out"))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("cut short");
        Path foreign =
                Files.write(folder.resolve("f.session"), "%PDF-1.7\n".repeat(50).getBytes(StandardCharsets.UTF_8));
        assertThatThrownBy(() -> export(foreign, "out")).hasMessageContaining("not a session");
        assertThat(names()).containsExactly("a.session", "cut.session", "f.session", "taken");
    }

    @Test
    void sessionBeingRecordedIsLeftAlone() throws Exception {
        Path running = folder.resolve("r.session");
        SessionWriter writer = SessionWriter.create(
                running, new SessionHead("r", Instant.EPOCH, ZoneOffset.UTC, false, "test", "", "u", "", ""));
        assertThatThrownBy(() -> export(running, "out"))
                .isInstanceOf(ExportException.class)
                .hasMessageContaining("being recorded");
        writer.close();
    }
}
