package railwitness.logger.command;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.design.Unit;
import railwitness.logger.sheet.Sheets;
import railwitness.logger.store.SessionHead;

/** The head of a session that begins now. */
final class Heads {
    private static final DateTimeFormatter ID =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss-SSS", Locale.ROOT).withZone(ZoneOffset.UTC);

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
        return new SessionHead(
                ID.format(start),
                start,
                ZoneId.systemDefault(),
                rehearsal,
                Main.Version.text(),
                acknowledgedBy,
                unit.map(Unit::name).orElse(otherwise),
                unit.flatMap(Unit::serial).orElse(""),
                unit.flatMap(Unit::condition).map(Unit.Condition::word).orElse(""));
    }
}
