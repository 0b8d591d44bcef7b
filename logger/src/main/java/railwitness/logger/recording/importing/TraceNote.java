package railwitness.logger.recording.importing;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.store.EventEntry;

/**
 * What was said of an imported trace, kept as an event that people and the program read.
 *
 * @param from name of the file it came from
 * @param bandHz upper end (-3 dB) of the band it was taken in, Hz, where stated
 * @param gainPct limit of the scope's gain error, percent, where stated
 */
public record TraceNote(Channel channel, String from, OptionalDouble bandHz, OptionalDouble gainPct) {
    private static final String WHAT = "trace";
    private static final Pattern WORDS = Pattern.compile(
            "([a-z0-9-]+\\.[a-z]+) taken from (.*), at full load, (?:band up to (\\S+) Hz|band not stated), "
                    + "(?:gain within (\\S+) %|accuracy not stated)");

    /** Reads a note back; empty for other events. */
    public static Optional<TraceNote> of(EventEntry event) {
        Matcher words = WORDS.matcher(event.text());
        if (!event.what().equals(WHAT) || !words.matches()) {
            return Optional.empty();
        }
        return Optional.of(new TraceNote(
                Channel.of(words.group(1)), words.group(2), number(words.group(3)), number(words.group(4))));
    }

    private static OptionalDouble number(String text) {
        return text == null ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
    }

    /** As an event at that time, ns. */
    public EventEntry at(long nanos) {
        String band = bandHz.isPresent()
                ? String.format(Locale.ROOT, "band up to %.6g Hz", bandHz.getAsDouble())
                : "band not stated";
        String gain = gainPct.isPresent()
                ? String.format(Locale.ROOT, "gain within %.6g %%", gainPct.getAsDouble())
                : "accuracy not stated";
        return new EventEntry(
                nanos, WHAT, String.join(", ", channel + " taken from " + from, "at full load", band, gain));
    }
}
