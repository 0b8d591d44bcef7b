package railwitness.logger.reporting.exporting;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.InstrumentEntry;
import railwitness.logger.recording.store.NoteEntry;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.TimeSpan;
import railwitness.logger.recording.store.VirtualBenchHead;
import railwitness.logger.recording.store.WaveformEntry;

/** What a session keeps besides its readings, each kind a table. */
final class RecordTables {
    private final SessionFile session;
    private final Times times;
    private final Path folder;

    RecordTables(SessionFile session, Times times, Path folder) {
        this.session = session;
        this.times = times;
        this.folder = folder;
    }

    void write() throws IOException {
        head();
        steps();
        instruments();
        events();
        notes();
        exchanges();
        waveforms();
    }

    private CsvTable table(String name, String... columns) throws IOException {
        CsvTable table = CsvTable.create(folder.resolve(name + ".csv"));
        table.head(List.of(columns));
        return table;
    }

    private void head() throws IOException {
        SessionHead head = VirtualBenchHead.of(session);
        try (CsvTable table = table("session", "what", "value")) {
            table.plain("id").text(head.id()).end();
            table.plain("started").plain(times.instant(0)).end();
            table.plain("zone").text(head.zone().getId()).end();
            table.plain("state").plain(session.state().word()).end();
            table.plain("rehearsal").plain(head.rehearsal() ? "yes" : "no").end();
            table.plain("unit").text(head.unitName()).end();
            table.plain("serial").text(head.unitSerial()).end();
            table.plain("condition").text(head.unitCondition()).end();
            table.plain("acknowledged by").text(head.acknowledgedBy()).end();
            table.plain("program version").text(head.programVersion()).end();
            table.plain("seal").plain(session.seal()).end();
        }
    }

    private void steps() throws IOException {
        TreeSet<String> rails = new TreeSet<>();
        session.steps().forEach(step -> rails.addAll(step.loadAmps().keySet()));
        List<String> columns = new ArrayList<>(List.of(
                "stage",
                "step",
                "begin",
                "begin_s",
                "average_from_s",
                "average_to_s",
                "settled",
                "outcome",
                "reason",
                "set.input_V"));
        rails.forEach(rail -> columns.add("set." + rail + "_A"));
        try (CsvTable table = table("steps", columns.toArray(String[]::new))) {
            for (StepEntry step : session.steps()) {
                step(table, step, rails);
            }
        }
    }

    private void step(CsvTable table, StepEntry step, TreeSet<String> rails) throws IOException {
        table.text(step.stage()).text(step.step());
        times.cells(table, step.beginNanos());
        Optional<TimeSpan> average = step.average();
        table.plain(average.map(span -> Times.seconds(span.fromNanos())).orElse(""))
                .plain(average.map(span -> Times.seconds(span.toNanos())).orElse(""))
                .plain(step.settled() ? "yes" : "no")
                .plain(step.outcome().words())
                .text(step.reason())
                .plain(
                        step.inputVolts().isPresent()
                                ? ShortestNumber.of(step.inputVolts().getAsDouble())
                                : "");
        for (String rail : rails) {
            Double amps = step.loadAmps().get(rail);
            table.plain(amps == null ? "" : ShortestNumber.of(amps));
        }
        table.end();
    }

    private void instruments() throws IOException {
        try (CsvTable table = table(
                "instruments", "name", "kind", "port", "dialect", "maker", "model", "serial", "firmware", "accuracy")) {
            for (InstrumentEntry one : session.instruments()) {
                table.text(one.name()).text(one.kind()).text(one.port()).text(one.dialect());
                table.text(one.identity().maker()).text(one.identity().model());
                table.text(one.identity().serial())
                        .text(one.identity().firmware())
                        .text(one.accuracy());
                table.end();
            }
        }
    }

    private void events() throws IOException {
        try (CsvTable table = table("events", "time", "time_s", "what", "text")) {
            for (EventEntry event : session.events()) {
                times.cells(table, event.nanos());
                table.text(event.what()).text(event.text()).end();
            }
        }
    }

    private void notes() throws IOException {
        try (CsvTable table = table("notes", "time", "time_s", "author", "text")) {
            for (NoteEntry note : session.notes()) {
                times.cells(table, note.nanos());
                table.text(note.author()).text(note.text()).end();
            }
        }
    }

    private void exchanges() throws IOException {
        try (CsvTable table = table("exchanges", "time", "time_s", "instrument", "sent", "received", "trouble")) {
            session.exchanges(one -> unchecked(() -> {
                times.cells(table, one.nanos());
                table.text(one.instrument())
                        .text(one.sent())
                        .text(one.received())
                        .text(one.trouble());
                table.end();
            }));
        }
    }

    private void waveforms() throws IOException {
        try (CsvTable table =
                table("waveforms", "waveform", "time", "time_s", "channel", "unit", "after_trigger_s", "value")) {
            int[] number = {0};
            session.waveforms(one -> unchecked(() -> waveform(table, ++number[0], one)));
        }
    }

    private void waveform(CsvTable table, int number, WaveformEntry entry) throws IOException {
        Channel channel = entry.waveform().channel();
        double[] values = entry.waveform().values();
        for (int i = 0; i < values.length; i++) {
            table.plain(Integer.toString(number));
            times.cells(table, entry.nanos());
            table.plain(channel.toString()).plain(channel.quantity().unit());
            table.number(entry.waveform().startSeconds() + i * entry.waveform().stepSeconds())
                    .number(values[i]);
            table.end();
        }
    }

    private interface Writing {
        void write() throws IOException;
    }

    private static void unchecked(Writing writing) {
        try {
            writing.write();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
