package railwitness.logger.recording.store;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Foresees when the disk will be full from how fast the session grows, and says so once at each of a few distances.
 */
final class DiskForecast {
    private static final List<Duration> DISTANCES = List.of(
            Duration.ofHours(24),
            Duration.ofHours(12),
            Duration.ofHours(4),
            Duration.ofHours(1),
            Duration.ofMinutes(10));
    private static final double LEAST_SECONDS = 120;

    private double firstSeconds = Double.NEGATIVE_INFINITY;
    private long firstBytes;
    private int said;

    /**
     * Looks at the disk.
     *
     * @param seconds time of any even clock, s
     * @param sessionBytes what the session takes now
     * @param freeBytes what is left on its disk
     * @return what to tell the technician, if this is the first time that so little time is left
     */
    Optional<String> look(double seconds, long sessionBytes, long freeBytes) {
        if (firstSeconds == Double.NEGATIVE_INFINITY) {
            firstSeconds = seconds;
            firstBytes = sessionBytes;
        }
        if (seconds - firstSeconds < LEAST_SECONDS || sessionBytes <= firstBytes) {
            return Optional.empty();
        }
        double bytesPerSecond = (sessionBytes - firstBytes) / (seconds - firstSeconds);
        double leftSeconds = freeBytes / bytesPerSecond;
        int reached = said;
        while (reached < DISTANCES.size()
                && leftSeconds <= DISTANCES.get(reached).toSeconds()) {
            reached++;
        }
        if (reached == said) {
            return Optional.empty();
        }
        said = reached;
        return Optional.of(words(leftSeconds, bytesPerSecond, freeBytes));
    }

    private static String words(double leftSeconds, double bytesPerSecond, long freeBytes) {
        String left = leftSeconds >= 5400
                ? String.format(Locale.ROOT, "%.0f h", leftSeconds / 3600)
                : String.format(Locale.ROOT, "%.0f min", leftSeconds / 60);
        return String.format(
                Locale.ROOT,
                "the disk will be full in about %s: %.0f MB are left and the session grows by %.1f MB an hour; make room on it",
                left,
                freeBytes / 1e6,
                bytesPerSecond * 3600 / 1e6);
    }
}
