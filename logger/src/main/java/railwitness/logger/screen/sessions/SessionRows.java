package railwitness.logger.screen.sessions;

import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.verdict.Fitness;
import railwitness.logger.screen.paper.Cell;
import railwitness.logger.screen.paper.Column;
import railwitness.logger.screen.paper.Ink;
import railwitness.logger.screen.paper.Row;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.store.SessionHead;
import railwitness.logger.store.SessionState;

/** The sessions of a folder as rows. */
final class SessionRows {
    private SessionRows() {}

    static List<Column> columns() {
        return List.of(
                Column.words(Words.of("sessions.unit")),
                Column.words(Words.of("sessions.serial")),
                Column.words(Words.of("sessions.date")),
                Column.words(Words.of("sessions.state")),
                Column.words(Words.of("sessions.verdict")));
    }

    static List<Row> of(List<SessionEntry> entries, Optional<Path> marked) {
        return entries.stream().map(entry -> row(entry, marked)).toList();
    }

    private static Row row(SessionEntry entry, Optional<Path> marked) {
        boolean mine = marked.isPresent() && marked.get().equals(entry.file());
        if (entry.head().isEmpty()) {
            return Row.of(List.of(
                    Cell.of(entry.file().getFileName().toString(), Ink.MUTED),
                    Cell.EMPTY,
                    Cell.EMPTY,
                    Cell.of(Words.of("sessions.unreadable"), Ink.FAULT),
                    Cell.EMPTY));
        }
        SessionHead head = entry.head().get();
        String date = DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT)
                .withZone(head.zone())
                .format(head.startedWall());
        String name = head.unitName() + (mine ? " " + Words.of("sessions.first") : "");
        return Row.of(List.of(
                Cell.ink(name),
                Cell.ink(head.unitSerial()),
                Cell.ink(date),
                Cell.of(
                        Words.of("sessions.state." + entry.state().name())
                                + (head.rehearsal() ? ", " + Words.of("sessions.rehearsal") : ""),
                        entry.state() == SessionState.COMPLETE ? Ink.MUTED : Ink.INK),
                entry.verdict()
                        .map(fitness -> Cell.of(
                                Words.of("fitness.short." + fitness.name()),
                                fitness == Fitness.NOT_FIT ? Ink.FAULT : Ink.INK))
                        .orElse(Cell.of("\u2026", Ink.MUTED))));
    }
}
