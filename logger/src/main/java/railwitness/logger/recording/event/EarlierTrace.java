package railwitness.logger.recording.event;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.drivers.reading.Channel;

/** What sessions recorded before events had numbers say of an imported trace. */
final class EarlierTrace {
    private static final Pattern WORDS = Pattern.compile(
            "([a-z0-9-]+\\.[a-z]+) taken from (.*), at full load, (?:band up to (\\S+) Hz|band not stated), "
                    + "(?:gain within (\\S+) %|accuracy not stated)");

    private EarlierTrace() {}

    /** Empty for another event, and for words that the program did not write. */
    static Optional<SessionEvent> of(String what, String text) {
        Matcher words = WORDS.matcher(text);
        if (!what.equals(EventKind.TRACE.word()) || !words.matches()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new SessionEvent.TraceTaken(
                    Channel.of(words.group(1)), words.group(2), number(words.group(3)), number(words.group(4))));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static OptionalDouble number(String text) {
        return text == null ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
    }
}
