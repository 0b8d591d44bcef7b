package railwitness.logger.recording.points;

import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.store.Trace;

/**
 * The visits of a meter that is moved from place to place. It comes back to where it began: by how much that reading has
 * changed meanwhile, everything read between may have changed by as much of its own (a straight drift moves what was
 * read at any time by half of it at most from the mean of both).
 */
public final class Visits {
    private Visits() {}

    /** Half-width of the drift of what was read once between two readings of the first place, as a share of its value. */
    static Map<Channel, Double> drifts(BenchSheet bench, Map<Channel, Trace> traces) {
        Map<Channel, Double> drifts = new HashMap<>();
        for (List<Channel> places : places(bench)) {
            double share = places.stream()
                    .filter(channel ->
                            traces.containsKey(channel) && traces.get(channel).count() > 1)
                    .mapToDouble(channel -> halfShare(traces.get(channel).values()))
                    .max()
                    .orElse(0);
            places.stream()
                    .filter(channel ->
                            traces.containsKey(channel) && traces.get(channel).count() == 1)
                    .forEach(channel -> drifts.put(channel, share));
        }
        return drifts;
    }

    /** For each meter that is moved the channels it reads, one after the other. */
    public static Collection<List<Channel>> places(BenchSheet bench) {
        return bench.handRead().stream()
                .filter(meter -> meter.moved().isPresent())
                .collect(Collectors.groupingBy(
                        HandRead::meter, LinkedHashMap::new, Collectors.mapping(HandRead::reads, Collectors.toList())))
                .values();
    }

    private static double halfShare(double[] values) {
        double low = values[0];
        double high = values[0];
        double sum = 0;
        for (double value : values) {
            low = Math.min(low, value);
            high = Math.max(high, value);
            sum += value;
        }
        double mean = Math.abs(sum / values.length);
        return mean == 0 ? 0 : (high - low) / 2 / mean;
    }
}
