package railwitness.logger.ui.screen.sessions;

import java.nio.file.Path;
import java.util.List;
import railwitness.analysis.verdict.Fitness;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.reporting.comparing.Comparison;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.Words;

/** The sessions of a folder as rows. */
final class SessionRows {
    private SessionRows() {}

    static List<Column> columns() {
        return List.of(
                new Column(List.of(""), false, 14),
                Column.words(Words.of("sessions.unit")),
                Column.words(Words.of("sessions.serial")).givingWay(1),
                Column.words(Words.of("sessions.date")).givingWay(3),
                Column.words(Words.of("sessions.state")).givingWay(2),
                Column.words(Words.of("sessions.verdict")));
    }

    /** @param marked in the order in which they were marked: A, B, C and so on */
    static List<Row> of(List<SessionEntry> entries, List<Path> marked) {
        return entries.stream().map(entry -> row(entry, marked)).toList();
    }

    private static Row row(SessionEntry entry, List<Path> marked) {
        int place = marked.indexOf(entry.file());
        Cell letter = Cell.of(place < 0 ? "" : Comparison.letter(place), Ink.LIVE);
        if (entry.head().isEmpty()) {
            return Row.of(List.of(
                    letter,
                    Cell.of(entry.file().getFileName().toString(), Ink.MUTED),
                    Cell.EMPTY,
                    Cell.EMPTY,
                    Cell.of(Words.of("sessions.unreadable"), Ink.FAULT),
                    Cell.EMPTY));
        }
        SessionHead head = entry.head().get();
        return Row.of(List.of(
                letter,
                Cell.ink(head.unitName()),
                Cell.ink(head.unitSerial()),
                Cell.ink(date(head)),
                Cell.of(state(entry), entry.state() == SessionState.COMPLETE ? Ink.MUTED : Ink.INK),
                verdict(entry)));
    }

    /** When it began, by the clock of its bench. */
    static String date(SessionHead head) {
        return Numbers.moment(head.startedWall(), head.zone());
    }

    private static String state(SessionEntry entry) {
        return Words.of("sessions.state." + entry.state().name())
                + (entry.head().orElseThrow().rehearsal() ? ", " + Words.of("sessions.rehearsal") : "");
    }

    private static Cell verdict(SessionEntry entry) {
        if (entry.verdict().isEmpty()) {
            return Cell.of(entry.trouble().isEmpty() ? "\u2026" : "\u2013", Ink.MUTED);
        }
        boolean whole = entry.state() == SessionState.COMPLETE;
        Fitness fitness =
                entry.verdict().filter(found -> whole || found != Fitness.FIT).orElse(Fitness.NOT_JUDGED);
        return Cell.of(Words.of("fitness.short." + fitness.name()), fitness == Fitness.NOT_FIT ? Ink.FAULT : Ink.INK);
    }
}
