package railwitness.logger.reporting.exporting;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.TimeSpan;
import railwitness.logger.recording.store.VirtualBenchHead;

/**
 * All readings in the order in which they came, one row for each, so that importing the table gives the same points. Its
 * memory does not grow with the session: it goes through it in stretches that hold a bounded number of readings.
 */
final class ReadingsTable {
    private static final long STRETCH_NANOS = 120_000_000_000L;
    private static final int MOST_READINGS = 250_000;

    private final SessionFile session;
    private final Times times;
    private final boolean rehearsal;
    private final Map<Channel, Integer> places = new LinkedHashMap<>();
    private final List<String> rails;
    private final List<StepEntry> steps;
    private final ExportListener listener;
    private final BooleanSupplier stopped;
    private CsvTable table;
    private int nextStep;
    private boolean inStep;
    private long written;

    ReadingsTable(SessionFile session, Times times, ExportListener listener, BooleanSupplier stopped) {
        this.session = session;
        this.times = times;
        this.listener = listener;
        this.stopped = stopped;
        this.rehearsal = VirtualBenchHead.of(session).rehearsal();
        session.channels().forEach(channel -> places.put(channel, places.size()));
        this.steps = session.steps().stream()
                .filter(step -> step.outcome() == StepOutcome.MEASURED)
                .sorted(Comparator.comparingLong(
                        step -> step.average().orElseThrow().fromNanos()))
                .toList();
        TreeSet<String> loaded = new TreeSet<>();
        steps.forEach(step -> loaded.addAll(step.loadAmps().keySet()));
        this.rails = List.copyOf(loaded);
    }

    /** @return how many readings it holds */
    long write(Path file) throws IOException {
        try (CsvTable open = CsvTable.create(file)) {
            table = open;
            table.head(names());
            stretch(Long.MIN_VALUE, 0);
            long last = session.lastNanos() + 1;
            long from = 0;
            long length = STRETCH_NANOS;
            while (from < last) {
                long to = last - from > length ? from + length : last;
                long before = written;
                if (stretch(from, to)) {
                    from = to;
                    length = written == before ? Math.min(length * 2, Long.MAX_VALUE / 4) : STRETCH_NANOS;
                } else {
                    length = Math.max(1, (to - from) / 2);
                }
                listener.at((double) from / last, written);
            }
            stretch(last, Long.MAX_VALUE);
            marksUpTo(Long.MAX_VALUE);
        }
        return written;
    }

    private List<String> names() {
        List<String> names = new ArrayList<>(List.of("time", "time_s", "requested_s"));
        if (rehearsal) {
            names.add("rehearsal");
        }
        names.addAll(List.of("stage", "step", "begin_s", "settled", "set.input_V"));
        rails.forEach(rail -> names.add("set." + rail + "_A"));
        places.keySet()
                .forEach(channel -> names.add(channel + "_" + channel.quantity().unit()));
        return names;
    }

    /** False where it would hold too many readings at once and nothing was written. */
    private boolean stretch(long from, long to) throws IOException {
        if (stopped.getAsBoolean()) {
            throw new ExportException("the export was stopped; nothing of it is left");
        }
        List<Reading> readings = new ArrayList<>();
        TimeSpan span = new TimeSpan(from, to);
        boolean divisible = to - from > 1;
        for (Channel channel : places.keySet()) {
            session.readings(channel, span, reading -> {
                if (readings.size() <= MOST_READINGS || !divisible) {
                    readings.add(reading);
                }
            });
        }
        if (readings.size() > MOST_READINGS && divisible) {
            return false;
        }
        readings.sort(Comparator.comparingLong(Reading::repliedNanos));
        for (Reading reading : readings) {
            marksUpTo(reading.repliedNanos());
            row(reading);
        }
        written += readings.size();
        return true;
    }

    /** A row without a reading where a step's average begins and one where it ends, so that its span is kept. */
    private void marksUpTo(long nanos) throws IOException {
        while (nextStep < steps.size()) {
            TimeSpan span = steps.get(nextStep).average().orElseThrow();
            if (!inStep) {
                if (nanos < span.fromNanos()) {
                    return;
                }
                inStep = true;
                mark(span.fromNanos());
            }
            if (nanos < span.toNanos()) {
                return;
            }
            mark(span.toNanos() - 1);
            inStep = false;
            nextStep++;
        }
    }

    private void mark(long nanos) throws IOException {
        begin(nanos, nanos);
        for (int i = 0; i < places.size(); i++) {
            table.empty();
        }
        table.end();
    }

    private void row(Reading reading) throws IOException {
        begin(reading.repliedNanos(), reading.requestedNanos());
        int place = places.get(reading.channel());
        for (int i = 0; i < places.size(); i++) {
            if (i == place) {
                cell(reading);
            } else {
                table.empty();
            }
        }
        table.end();
    }

    private void begin(long nanos, long requestedNanos) throws IOException {
        times.cells(table, nanos);
        table.plain(Times.seconds(requestedNanos));
        if (rehearsal) {
            table.plain("yes");
        }
        if (!inStep) {
            for (int i = 0; i < 5 + rails.size(); i++) {
                table.empty();
            }
            return;
        }
        StepEntry step = steps.get(nextStep);
        table.text(step.stage())
                .text(step.step())
                .plain(Times.seconds(step.beginNanos()))
                .plain(step.settled() ? "yes" : "no");
        table.plain(
                step.inputVolts().isPresent()
                        ? ShortestNumber.of(step.inputVolts().getAsDouble())
                        : "");
        for (String rail : rails) {
            Double amps = step.loadAmps().get(rail);
            table.plain(amps == null ? "" : ShortestNumber.of(amps));
        }
    }

    private void cell(Reading reading) throws IOException {
        if (reading instanceof Measured measured) {
            table.number(measured.value());
        } else if (reading instanceof Missing missing) {
            table.text("missing: " + missing.reason());
        } else {
            table.plain("overload");
        }
    }
}
