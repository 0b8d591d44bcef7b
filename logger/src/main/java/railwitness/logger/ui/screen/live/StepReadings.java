package railwitness.logger.ui.screen.live;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.store.TimeSpan;
import railwitness.logger.recording.store.Trace;

/** The numbers read since a step began, kept until it has ended; a very long step keeps only its last ones. */
final class StepReadings {
    private static final int MOST = 20_000;

    private final SortedMap<Channel, List<Measured>> all = new TreeMap<>();

    void clear() {
        all.clear();
    }

    void heard(Reading reading) {
        if (reading instanceof Measured measured) {
            List<Measured> mine = all.computeIfAbsent(reading.channel(), channel -> new ArrayList<>());
            if (mine.size() == MOST) {
                mine.subList(0, MOST / 2).clear();
            }
            mine.add(measured);
        }
    }

    SortedMap<Channel, Trace> during(TimeSpan span) {
        SortedMap<Channel, Trace> traces = new TreeMap<>();
        all.forEach((channel, readings) -> {
            List<Measured> inside = readings.stream()
                    .filter(one -> span.holds(one.repliedNanos()))
                    .toList();
            traces.put(
                    channel,
                    new Trace(
                            channel,
                            inside.stream().mapToDouble(Measured::value).toArray(),
                            inside.stream().mapToLong(Measured::requestedNanos).toArray(),
                            inside.stream().mapToLong(Measured::repliedNanos).toArray(),
                            0,
                            0));
        });
        return traces;
    }
}
