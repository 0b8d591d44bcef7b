package railwitness.logger.ui.command;

import java.time.Instant;
import java.util.Optional;
import railwitness.analysis.design.Unit;
import railwitness.logger.recording.record.NewHead;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionHead;

/** The head of a session that begins now. */
final class Heads {
    private Heads() {}

    static SessionHead of(Sheets sheets, Instant start, boolean rehearsal, Optional<String> acknowledgedBy) {
        return of(
                Optional.of(sheets.design().content().unit()),
                start,
                rehearsal,
                acknowledgedBy.orElse(""),
                "unnamed unit");
    }

    static SessionHead of(
            Optional<Unit> unit, Instant start, boolean rehearsal, String acknowledgedBy, String otherwise) {
        return NewHead.of(unit, start, rehearsal, Main.Version.text(), acknowledgedBy, otherwise);
    }
}
