package railwitness.logger.recording.record;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.design.Unit;
import railwitness.logger.recording.store.SessionHead;

/** The head of a session that begins now. */
public final class NewHead {
    private static final DateTimeFormatter ID =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss-SSS", Locale.ROOT).withZone(ZoneOffset.UTC);

    private NewHead() {}

    /**
     * @param programVersion version of the program that records
     * @param acknowledgedBy who took responsibility; empty when nobody was asked
     * @param otherwise what the unit is called where there is no design sheet
     */
    public static SessionHead of(
            Optional<Unit> unit,
            Instant start,
            boolean rehearsal,
            String programVersion,
            String acknowledgedBy,
            String otherwise) {
        return new SessionHead(
                ID.format(start),
                start,
                ZoneId.systemDefault(),
                rehearsal,
                programVersion,
                acknowledgedBy,
                unit.map(Unit::name).orElse(otherwise),
                unit.flatMap(Unit::serial).orElse(""),
                unit.flatMap(Unit::condition).map(Unit.Condition::word).orElse(""));
    }
}
