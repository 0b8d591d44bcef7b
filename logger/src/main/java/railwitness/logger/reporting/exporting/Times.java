package railwitness.logger.reporting.exporting;

import java.io.IOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import railwitness.logger.recording.store.Anchor;

/** Times of the session's axis, as instants and as seconds: the shortest text of the very same nanosecond. */
final class Times {
    private static final DateTimeFormatter INSTANT =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss", Locale.ROOT).withZone(ZoneOffset.UTC);

    private static final long SECOND = 1_000_000_000L;

    private final List<Anchor> anchors;

    Times(List<Anchor> anchors) {
        this.anchors = List.copyOf(anchors);
    }

    /** ISO 8601, UTC, by the last anchor before. */
    String instant(long nanos) {
        Anchor best = anchors.get(0);
        for (Anchor anchor : anchors) {
            if (anchor.nanos() <= nanos) {
                best = anchor;
            }
        }
        Instant wall = best.wallOf(nanos);
        return INSTANT.format(wall) + fraction(wall.getNano()) + "Z";
    }

    static String seconds(long nanos) {
        long whole = Math.abs(nanos) / SECOND;
        return (nanos < 0 ? "-" : "") + whole + fraction(Math.abs(nanos) % SECOND);
    }

    /** The point and the digits behind it, none that says nothing. */
    private static String fraction(long nanos) {
        if (nanos == 0) {
            return "";
        }
        int end = 10;
        String digits = Long.toString(SECOND + nanos);
        while (digits.charAt(end - 1) == '0') {
            end--;
        }
        return "." + digits.substring(1, end);
    }

    /** The columns {@code time} and {@code time_s}. */
    void cells(CsvTable table, long nanos) throws IOException {
        table.plain(instant(nanos)).plain(seconds(nanos));
    }
}
