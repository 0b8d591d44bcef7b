package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.reading.Waveform;

class SessionFileTest {
    private static final Channel PLUS = Channel.of("plus.voltage");
    private static final Channel INPUT = Channel.of("input.current");

    @TempDir
    Path folder;

    @Test
    void everyEntryComesBackAsItWasAdded() {
        Path file = folder.resolve("a.session");
        SheetEntry sheet = new SheetEntry("design", "lock-keeper.toml", "name = \"Zeitmaß ±35 V\"\r\n");
        InstrumentEntry instrument =
                new InstrumentEntry("dmm", "meter", "/dev/x", "plain", new Identity("a", "b", "c", "d"), "0.02 %");
        StepEntry step = new StepEntry(
                "load-sweep",
                "50 %",
                5,
                Optional.of(new TimeSpan(7, 9)),
                true,
                StepOutcome.MEASURED,
                "",
                OptionalDouble.of(12.6),
                new TreeMap<>(java.util.Map.of("plus", 2.5, "minus", 2.4)));
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            for (Entry entry :
                    List.of(sheet, instrument, step, new EventEntry(1, "on", "power"), new NoteEntry(2, "", "hm"))) {
                writer.add(entry);
            }
            writer.exchange(3, "dmm", "READ?", "", "no answer in 1 s");
            writer.waveform(4, new Waveform(PLUS, -0.5, 0.25, new double[] {-0.0, 1e-300, 3}));
            writer.finish(SessionState.COMPLETE);
        }
        try (SessionFile session = SessionFile.open(file)) {
            assertThat(session.head()).isEqualTo(Heads.plain());
            assertThat(session.sheets()).containsExactly(sheet);
            assertThat(session.instruments()).containsExactly(instrument);
            assertThat(session.steps()).containsExactly(step);
            assertThat(session.events()).containsExactly(new EventEntry(1, "on", "power"));
            assertThat(session.notes()).containsExactly(new NoteEntry(2, "", "hm"));
            assertThat(session.exchanges())
                    .containsExactly(new ExchangeEntry(3, "dmm", "READ?", "", "no answer in 1 s"));
            assertThat(session.waveforms().get(0).waveform().values()).containsExactly(-0.0, 1e-300, 3);
            assertThat(session.state()).isEqualTo(SessionState.COMPLETE);
        }
    }

    @Test
    void readingsComeBackBitForBit() {
        Path file = folder.resolve("b.session");
        List<Reading> given = List.of(
                new Measured(PLUS, -0.0, 1, 2),
                new Measured(PLUS, 5.0, 3, 4),
                new Overload(PLUS, 5, 6),
                new Missing(PLUS, "no answer in 1 s", 7, 8),
                new Measured(PLUS, Double.MIN_VALUE, 9, 10),
                new Measured(PLUS, 0.1 + 0.2, 11, 12));
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            given.forEach(writer::reading);
        }
        try (SessionFile session = SessionFile.open(file)) {
            List<Reading> back = new ArrayList<>();
            session.readings(PLUS, TimeSpan.ALL, back::add);
            assertThat(back).isEqualTo(given);
            assertThat(session.lastValues()).containsEntry(PLUS, given.get(5));
            assertThat(session.state()).isEqualTo(SessionState.INTERRUPTED);
        }
    }

    @Test
    void aSessionBeingRecordedReadsAsRunning() {
        Path file = folder.resolve("c.session");
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            writer.reading(new Measured(INPUT, 4, 1, 2));
            writer.commit();
            try (SessionFile session = SessionFile.open(file)) {
                assertThat(session.state()).isEqualTo(SessionState.RUNNING);
                assertThat(session.state()).isEqualTo(SessionState.RUNNING);
                assertThat(session.trace(INPUT, TimeSpan.ALL).values()).containsExactly(4);
            }
        }
    }

    @Test
    void anOrderlyEndLeavesOneFile() {
        Path file = folder.resolve("d.session");
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            writer.finish(SessionState.STOPPED);
        }
        assertThat(folder.toFile().list()).containsExactly("d.session");
    }

    @Test
    void anOrderlyEndLeavesNoUnusedPage() throws Exception {
        Path file = folder.resolve("pages.session");
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            for (int i = 0; i < 3000; i++) {
                writer.reading(new Measured(PLUS, i, i, i));
            }
            writer.commit();
            writer.finish(SessionState.COMPLETE);
        }
        try (var connection = Sqlite.openForReading(file)) {
            assertThat(OpenedFile.pragma(connection, "freelist_count")).isZero();
        }
    }

    @Test
    void anExistingFileIsNotWrittenOver() throws Exception {
        Path file = Files.writeString(folder.resolve("e.session"), "mine");
        assertThatThrownBy(() -> SessionWriter.create(file, Heads.plain()))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("already there");
        assertThat(file).hasContent("mine");
    }

    @Test
    void anUnknownFolderIsNamed() {
        Path file = folder.resolve("nowhere/f.session");
        assertThatThrownBy(() -> SessionWriter.create(file, Heads.plain()))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("there is no folder");
    }

    @Test
    void aSecondWriterIsRefused() {
        Path file = folder.resolve("g.session");
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            assertThatThrownBy(() -> SessionWriter.create(file, Heads.plain()))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("being recorded");
            writer.finish(SessionState.COMPLETE);
        }
    }

    @Test
    void theEnvelopeKeepsEverySpike() {
        Path file = folder.resolve("h.session");
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            for (int i = 0; i < 1000; i++) {
                writer.reading(new Measured(PLUS, i == 777 ? 99 : 35, i * 1000L, i * 1000L + 10));
            }
        }
        try (SessionFile session = SessionFile.open(file)) {
            Envelope envelope = session.envelope(PLUS, TimeSpan.ALL, 10);
            assertThat(envelope.columns()).isEqualTo(10);
            assertThat(envelope.highest()[7]).isEqualTo(99);
            assertThat(envelope.highest()[6]).isEqualTo(35);
            assertThat(java.util.Arrays.stream(envelope.readings()).sum()).isEqualTo(1000);
        }
    }
}
