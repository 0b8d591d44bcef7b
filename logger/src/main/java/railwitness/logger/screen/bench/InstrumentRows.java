package railwitness.logger.screen.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.bench.Seen;
import railwitness.logger.screen.paper.Cell;
import railwitness.logger.screen.paper.ChannelNames;
import railwitness.logger.screen.paper.Column;
import railwitness.logger.screen.paper.Ink;
import railwitness.logger.screen.paper.Row;
import railwitness.logger.screen.paper.Words;

/** The instruments of a bench sheet as rows, with what they say while they are watched. */
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

    static List<Row> of(BenchSheet bench, Watching watching) {
        List<Row> rows = new ArrayList<>();
        for (InstrumentSheet instrument : bench.instruments()) {
            String reads = instrument.reads().stream().map(ChannelNames::full).collect(Collectors.joining(", "));
            Optional<Seen> seen = watching.seen(instrument.name());
            rows.add(Row.of(List.of(
                    Cell.ink(instrument.name()),
                    Cell.of(instrument.port().port(), Ink.MUTED),
                    Cell.of(reads, Ink.MUTED),
                    seen.map(SeenWords::value).orElse(Cell.EMPTY),
                    seen.map(SeenWords::identity).orElse(Cell.of("\u2013", Ink.MUTED)))));
        }
        for (HandRead meter : bench.handRead()) {
            rows.add(Row.of(List.of(
                    Cell.ink(meter.name()),
                    Cell.of(Words.of("bench.byhand"), Ink.MUTED),
                    Cell.of(ChannelNames.full(meter.reads()), Ink.MUTED),
                    Cell.EMPTY,
                    Cell.EMPTY)));
        }
        return rows;
    }
}
