package railwitness.logger.ui.screen.readings;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.TimeSpan;
import railwitness.logger.ui.screen.trace.StepSpan;
import railwitness.logger.ui.screen.widgets.RailNames;

/** A session's file, open for looking at. Everything here reads from the disk: not for the event thread. */
final class OpenReadings implements AutoCloseable {
    private static final double NANOS = 1e9;

    private final SessionFile file;

    /**
     * What is known before anything is drawn.
     *
     * @param whole length of the session, s
     * @param channels in the order in which they first came
     * @param steps that were begun
     * @param notes when remarks were written, s
     */
    record Facts(double whole, List<Channel> channels, List<StepSpan> steps, List<Double> notes) {}

    OpenReadings(Path path) {
        this.file = SessionFile.open(path);
    }

    Facts facts() {
        double whole = file.lastNanos() / NANOS;
        List<Double> notes =
                file.notes().stream().map(note -> seconds(note.nanos())).toList();
        return new Facts(whole, file.channels(), steps(whole), notes);
    }

    private List<StepSpan> steps(double whole) {
        List<StepEntry> entries = file.steps();
        List<StepSpan> spans = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            StepEntry entry = entries.get(i);
            double to = i + 1 < entries.size()
                    ? seconds(entries.get(i + 1).beginNanos())
                    : entry.average().map(span -> seconds(span.toNanos())).orElse(whole);
            spans.add(new StepSpan(
                    RailNames.inStep(entry.step()),
                    seconds(entry.beginNanos()),
                    to,
                    entry.average()
                            .map(span -> OptionalDouble.of(seconds(span.fromNanos())))
                            .orElse(OptionalDouble.empty()),
                    entry.average()
                            .map(span -> OptionalDouble.of(seconds(span.toNanos())))
                            .orElse(OptionalDouble.empty()),
                    OptionalDouble.empty()));
        }
        return spans;
    }

    private static double seconds(long nanos) {
        return nanos / NANOS;
    }

    /** @param columns of pixels, 1 or more */
    Map<Channel, DrawnChannel> draw(Set<Channel> channels, Reach reach, int columns) {
        Map<Channel, DrawnChannel> drawn = new LinkedHashMap<>();
        TimeSpan span = TimeSpan.ofSeconds(reach.from(), reach.to() + (reach.isAll() ? 1 : 0));
        channels.forEach(channel -> drawn.put(channel, new DrawnChannel(file.envelope(channel, span, columns))));
        return drawn;
    }

    @Override
    public void close() {
        file.close();
    }
}
