package railwitness.logger.reporting.exporting;

import java.io.IOException;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import railwitness.logger.recording.store.Anchor;

/** Times of the session's axis, as instants and as seconds, both to the nanosecond. */
final class Times {
    private static final DateTimeFormatter INSTANT = DateTimeFormatter.ofPattern(
                    "uuuu-MM-dd'T'HH:mm:ss.nnnnnnnnn'Z'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

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
        return INSTANT.format(best.wallOf(nanos));
    }

    static String seconds(long nanos) {
        long whole = Math.abs(nanos) / 1_000_000_000L;
        String rest = Long.toString(1_000_000_000L + Math.abs(nanos) % 1_000_000_000L);
        return (nanos < 0 ? "-" : "") + whole + "." + rest.substring(1);
    }

    /** The columns {@code time} and {@code time_s}. */
    void cells(CsvTable table, long nanos) throws IOException {
        table.plain(instant(nanos)).plain(seconds(nanos));
    }
}
