package railwitness.logger.ui.screen.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import railwitness.drivers.bench.Seen;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;

/** Readings that are waited for while the bench is watched: so many of each channel, each from a look that began later. */
final class Gathering {
    private static final long AT_MOST_NANOS = Duration.ofSeconds(15).toNanos();

    private final Watching watching;
    private final Map<Channel, String> instruments;
    private final int each;
    private final Map<String, Seen> last = new HashMap<>();
    private final Map<Channel, List<Double>> values = new HashMap<>();
    /** Instruments of which a look may have been under way when the gathering began; it does not count. */
    private final Set<String> underWay = new HashSet<>();

    private final long began = System.nanoTime();

    /**
     * @param instruments who reads each channel
     * @param each how many readings of each channel
     */
    Gathering(Watching watching, Map<Channel, String> instruments, int each) {
        this.watching = watching;
        this.instruments = Map.copyOf(instruments);
        this.each = each;
        instruments.values().forEach(name -> watching.seen(name).ifPresent(seen -> last.put(name, seen)));
        underWay.addAll(instruments.values());
        instruments.keySet().forEach(channel -> values.put(channel, new ArrayList<>()));
    }

    /** Takes what has come since the last time; answers whether it is enough, or too long has been waited. */
    boolean over() {
        instruments.values().stream().distinct().forEach(this::look);
        return values.values().stream().allMatch(list -> list.size() >= each)
                || System.nanoTime() - began > AT_MOST_NANOS;
    }

    private void look(String instrument) {
        Optional<Seen> seen = watching.seen(instrument);
        if (seen.isEmpty() || seen.get() == last.get(instrument)) {
            return;
        }
        last.put(instrument, seen.get());
        if (underWay.remove(instrument)) {
            return;
        }
        seen.get().pollResult().ifPresent(pollResult -> pollResult.readings().forEach(reading -> {
            if (reading instanceof Measured measured && values.containsKey(measured.channel())) {
                values.get(measured.channel()).add(measured.value());
            }
        }));
    }

    /** What has come of this channel; none where nobody answered in time. */
    List<Double> of(Channel channel) {
        return List.copyOf(values.getOrDefault(channel, List.of()));
    }
}
