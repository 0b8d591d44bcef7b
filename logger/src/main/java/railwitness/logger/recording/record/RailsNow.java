package railwitness.logger.recording.record;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.LatestReadings;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Reading;

/**
 * What stands between a unit's output terminals, as far as the meters say.
 *
 * @param betweenVolts highest voltage between any two of the rails that were read and 0 V, zero or more; empty where
 *     none was
 * @param unread rails that give no number, or only an old one: to be taken as charged
 */
public record RailsNow(OptionalDouble betweenVolts, List<String> unread) {
    /** A number older than this says nothing of what stands there now, s. */
    private static final double OLD_SECONDS = 5;

    public RailsNow {
        unread = List.copyOf(unread);
    }

    /**
     * At this moment.
     *
     * @param rails their names
     * @param last the last reading of each channel
     * @param nowSeconds on the session's axis
     */
    public static RailsNow of(List<String> rails, LatestReadings last, double nowSeconds) {
        List<String> unread = rails.stream()
                .filter(rail -> fresh(last, rail, nowSeconds).isEmpty())
                .toList();
        double[] volts = rails.stream()
                .flatMap(rail -> fresh(last, rail, nowSeconds).stream())
                .mapToDouble(Measured::value)
                .toArray();
        return new RailsNow(between(volts), unread);
    }

    private static Optional<Measured> fresh(LatestReadings last, String rail, double nowSeconds) {
        return last.fresh(new Channel(rail, Quantity.VOLTAGE), (nowSeconds - OLD_SECONDS) * 1e9);
    }

    /** Whether a reading still says what is now. */
    public static boolean isFresh(Reading reading, double nowSeconds) {
        return nowSeconds - reading.repliedNanos() / 1e9 <= OLD_SECONDS;
    }

    private static OptionalDouble between(double[] volts) {
        if (volts.length == 0) {
            return OptionalDouble.empty();
        }
        double highest = 0;
        double lowest = 0;
        for (double one : volts) {
            highest = Math.max(highest, one);
            lowest = Math.min(lowest, one);
        }
        return OptionalDouble.of(highest - lowest);
    }
}
