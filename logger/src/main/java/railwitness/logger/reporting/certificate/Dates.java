package railwitness.logger.reporting.certificate;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Dates as ISO 8601 writes them, in the session's own zone. */
final class Dates {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT);
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter OFFSET = DateTimeFormatter.ofPattern("xxx", Locale.ROOT);

    private Dates() {}

    static String day(Instant at, ZoneId zone) {
        return DAY.format(at.atZone(zone));
    }

    static String minute(Instant at, ZoneId zone) {
        return MINUTE.format(at.atZone(zone));
    }

    /** The later end of a span with its distance from UTC; the day is left out where it is the same. */
    static String until(Instant start, Instant end, ZoneId zone) {
        boolean sameDay = day(start, zone).equals(day(end, zone));
        String offset = OFFSET.format(end.atZone(zone));
        return (sameDay ? TIME : MINUTE).format(end.atZone(zone))
                + (offset.equals("+00:00") ? " UTC" : " UTC" + offset);
    }
}
