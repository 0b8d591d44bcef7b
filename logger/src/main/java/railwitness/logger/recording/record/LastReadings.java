package railwitness.logger.recording.record;

import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;

/** The last number of every channel, for whoever is told of a run. */
final class LastReadings {
    private final SortedMap<Channel, Double> last = new TreeMap<>();

    synchronized void heard(Reading reading) {
        if (reading instanceof Measured measured) {
            last.put(reading.channel(), measured.value());
        }
    }

    /** By channel, such as {@code plus.voltage}. */
    synchronized SortedMap<String, String> words() {
        SortedMap<String, String> words = new TreeMap<>();
        last.forEach((channel, value) -> words.put(channel.toString(), String.format(Locale.ROOT, "%.6g", value)));
        return words;
    }
}
