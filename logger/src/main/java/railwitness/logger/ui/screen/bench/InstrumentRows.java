package railwitness.logger.ui.screen.bench;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import railwitness.drivers.bench.Seen;
import railwitness.logger.recording.sheet.SheetDraft;
import railwitness.logger.recording.sheet.SheetEdit;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.ChannelNames;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.Words;

/** What stands on the bench as rows, also while its sheet is being written, with what it says while it is watched. */
final class InstrumentRows {
    private InstrumentRows() {}

    static List<Column> columns() {
        return List.of(
                Column.words(Words.of("bench.instrument")),
                Column.words(Words.of("bench.port")).givingWay(1),
                Column.words(Words.of("bench.reads")).givingWay(2),
                Column.numbers(Words.of("bench.value")),
                Column.words(Words.of("bench.identity")).givingWay(3));
    }

    /**
     * What a sheet says of one of them, whether anybody watches or not.
     *
     * @param port as the sheet writes it
     * @param reads in words
     * @param faulty something of it is not in order
     */
    record Said(BenchPlace place, String name, String port, String reads, boolean faulty) {}

    static List<Said> said(SheetDraft<?> draft) {
        SheetEdit sheet = draft.edit();
        return BenchPlace.of(sheet).stream()
                .map(place -> new Said(
                        place,
                        name(place, sheet),
                        port(place, sheet),
                        reads(place, sheet),
                        draft.faults().stream()
                                .anyMatch(fault -> sheet.holds(place.header(), place.place(), fault.line()))))
                .toList();
    }

    static List<Row> of(List<Said> all, Watching watching) {
        return all.stream().map(said -> row(said, watching)).toList();
    }

    private static Row row(Said said, Watching watching) {
        Optional<Seen> seen = said.place().instrument() ? watching.seen(said.name()) : Optional.empty();
        Ink ink = said.place().whole() ? Ink.MUTED : Ink.INK;
        return Row.of(List.of(
                Cell.of(said.name(), said.faulty() ? Ink.FAULT : ink),
                Cell.of(said.port(), Ink.MUTED),
                Cell.of(said.reads(), Ink.MUTED),
                seen.map(SeenWords::value).orElse(Cell.EMPTY),
                said.faulty()
                        ? Cell.of(Words.of("bench.faulty"), Ink.FAULT)
                        : seen.map(SeenWords::identity).orElse(Cell.EMPTY)));
    }

    /** What it is called, or what it is where it has no name. */
    static String name(BenchPlace place, SheetEdit sheet) {
        if (place.whole()) {
            return Words.of("bench.whole");
        }
        if (place.header().equals(BenchPlace.BANK)) {
            return Words.of("bench.bank", RailNames.full(place.text(sheet, "rail")));
        }
        String name = place.text(sheet, "name");
        return name.isEmpty() ? Words.of("bench.unnamed") : name;
    }

    private static String port(BenchPlace place, SheetEdit sheet) {
        return switch (place.header()) {
            case BenchPlace.INSTRUMENT -> place.text(sheet, "port");
            case BenchPlace.BY_HAND, BenchPlace.BANK -> Words.of("bench.byhand");
            default -> "";
        };
    }

    private static String reads(BenchPlace place, SheetEdit sheet) {
        List<String> channels = sheet.texts(place.header(), place.place(), "reads");
        if (channels.isEmpty() && place.text(sheet, "kind").equals("supply")) {
            return Words.of("bench.reads.supply");
        }
        return channels.stream().map(ChannelNames::ofText).collect(Collectors.joining(", "));
    }
}
