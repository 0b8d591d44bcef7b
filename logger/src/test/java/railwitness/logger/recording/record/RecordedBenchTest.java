package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.Meter;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.rehearsal.Trouble;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.scpi.ExchangeText;
import railwitness.drivers.scpi.LoggedInstrument;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.rehearsal.RecordedBench;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.TimeSpan;
import railwitness.logger.reporting.exporting.DialogueFiles;
import railwitness.logger.reporting.exporting.ExportException;

/** What instruments said in a session they say again. */
class RecordedBenchTest {
    @TempDir
    static Path folder;

    private static Path file;

    /** One meter knows no error queue. */
    @BeforeAll
    static void recorded() {
        file = folder.resolve("field.session");
        StoppedSession session = new StoppedSession(-1, run -> {});
        String bench = Sheets.demo().bench().text();
        session.virtual(file, bench, RehearsalPerson::new, scheduler -> session.far
                .instrument("plus meter")
                .trouble(Trouble.KNOWS_LITTLE));
    }

    private static List<Double> numbers(SessionFile session, Channel channel) {
        List<Double> all = new ArrayList<>();
        session.readings(channel, TimeSpan.ALL, reading -> {
            if (reading instanceof Measured measured) {
                all.add(measured.value());
            }
        });
        return all;
    }

    @Test
    void theSameInstrumentsAnswerWithTheSameLacksAndTheSameReadings() {
        VirtualScheduler clock = new VirtualScheduler(Instant.EPOCH);
        BenchSheet sheet = Sheets.demo().bench().content();
        try (SessionFile session = SessionFile.open(file);
                Bench bench = Bench.open(
                        sheet,
                        new RecordedBench(session, sheet).opener(clock),
                        clock,
                        WorkerMaker.inline(clock),
                        ExchangeLog.none())) {
            Meter meter = bench.meters().stream()
                    .map(InstrumentWorker::instrument)
                    .filter(found -> found.name().equals("plus meter"))
                    .findFirst()
                    .orElseThrow();
            assertThat(meter.lacks()).anyMatch(words -> words.startsWith("'SYST:ERR?' is not answered"));
            List<Double> then = numbers(session, new Channel("plus", Quantity.VOLTAGE));
            List<Double> now = new ArrayList<>();
            for (int i = 0; i < then.size(); i++) {
                now.add(((Measured) meter.poll().readings().get(0)).value());
            }
            assertThat(now).isEqualTo(then).hasSizeGreaterThan(20);
        }
    }

    @Test
    void whatIsSentToSomebodyHasNoMakerAndNoSerialNumberAndOpensAllTheSame() throws IOException {
        Path out = folder.resolve("dialogues");
        assertThat(DialogueFiles.write(file, out)).isEqualTo(10);
        List<Path> files;
        try (Stream<Path> inside = Files.list(out)) {
            files = inside.sorted().toList();
        }
        for (Path one : files) {
            assertThat(Files.readString(one)).doesNotContain("Railwitness", "plus meter", "minus load", "input shunt");
        }
        VirtualScheduler clock = new VirtualScheduler(Instant.EPOCH);
        BenchSheet sheet = Sheets.demo().bench().content();
        List<String> ports = sheet.instruments().stream()
                .map(instrument -> instrument.port().port())
                .toList();
        try (SessionFile session = SessionFile.open(file);
                Bench bench = Bench.open(
                        sheet,
                        port -> new PeerLine(port.port(), logged(files.get(ports.indexOf(port.port()))), clock),
                        clock,
                        WorkerMaker.inline(clock),
                        ExchangeLog.none())) {
            assertThat(bench.workers())
                    .allMatch(worker -> worker.instrument().identity().maker().equals("Maker"));
            assertThat(session.instruments()).hasSize(bench.workers().size());
        }
        assertThatThrownBy(() -> DialogueFiles.write(file, out))
                .isInstanceOf(ExportException.class)
                .hasMessageContaining("already there");
    }

    /** Readings are not in the log of a session. */
    private static LoggedInstrument logged(Path file) {
        try {
            return new LoggedInstrument(
                    ExchangeText.read("", Files.readString(file)), question -> java.util.Optional.of("1"));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
