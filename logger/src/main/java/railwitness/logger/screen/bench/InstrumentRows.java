package railwitness.logger.screen.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.instrument.Sweep;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Reading;
import railwitness.logger.screen.paper.Cell;
import railwitness.logger.screen.paper.Column;
import railwitness.logger.screen.paper.Ink;
import railwitness.logger.screen.paper.Numbers;
import railwitness.logger.screen.paper.Row;
import railwitness.logger.screen.paper.Words;

/** The instruments of a bench sheet as rows, with what they said when they were last looked at. */
final class InstrumentRows {
    private InstrumentRows() {}

    static List<Column> columns() {
        return List.of(
                Column.words(Words.of("bench.instrument")),
                Column.words(Words.of("bench.port")),
                Column.words(Words.of("bench.reads")),
                Column.numbers(Words.of("bench.value")),
                Column.words(Words.of("bench.identity")));
    }

    static List<Row> of(BenchSheet bench, BenchLook.Looked looked) {
        List<Row> rows = new ArrayList<>();
        for (InstrumentSheet instrument : bench.instruments()) {
            String reads = instrument.reads().stream().map(Object::toString).collect(Collectors.joining(", "));
            Sweep sweep = looked.sweeps().get(instrument.name());
            String value = sweep == null
                    ? ""
                    : sweep.readings().stream().map(InstrumentRows::value).collect(Collectors.joining("  "));
            rows.add(Row.of(List.of(
                    Cell.ink(instrument.name()),
                    Cell.of(instrument.port().port(), Ink.MUTED),
                    Cell.of(reads, Ink.MUTED),
                    Cell.of(value, Ink.LIVE),
                    Cell.of(looked.identities().getOrDefault(instrument.name(), "\u2013"), Ink.MUTED))));
        }
        for (HandRead meter : bench.handRead()) {
            rows.add(Row.of(List.of(
                    Cell.ink(meter.name()),
                    Cell.of(Words.of("bench.byhand"), Ink.MUTED),
                    Cell.of(meter.reads().toString(), Ink.MUTED),
                    Cell.EMPTY,
                    Cell.EMPTY)));
        }
        return rows;
    }

    private static String value(Reading reading) {
        if (reading instanceof Measured measured) {
            return Numbers.fixed(measured.value(), 3) + " "
                    + measured.channel().quantity().unit();
        }
        return Words.of(reading instanceof Overload ? "bench.overload" : "bench.missing");
    }
}
