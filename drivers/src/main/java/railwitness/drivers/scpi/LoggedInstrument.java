package railwitness.drivers.scpi;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.Peer;

/**
 * The exchange log of one instrument, replayed as that instrument: what happened on a bench becomes a test. A message gets
 * what it got in the log at its next place there; where it is not in what is left of the log, what it got last; where it is
 * not in the log at all, what {@code otherwise} says. What was answered by silence then is now.
 *
 * <p>Settings that are not in the log are taken in silence.
 */
public final class LoggedInstrument implements Peer {
    private static final Duration TIME = Duration.ofMillis(5);

    private final List<Exchange> log;
    private final Function<String, Optional<String>> otherwise;
    private final List<String> notInLog = new ArrayList<>();
    private int next;

    /** @param log of one instrument, in its order */
    public LoggedInstrument(List<Exchange> log) {
        this(log, question -> Optional.empty());
    }

    /** @param otherwise the reply to a question that the log does not hold; empty for silence */
    public LoggedInstrument(List<Exchange> log, Function<String, Optional<String>> otherwise) {
        this.log = List.copyOf(log);
        this.otherwise = otherwise;
    }

    @Override
    public synchronized Answer hear(String message) {
        Optional<Exchange> found = found(message);
        if (found.isEmpty() && message.contains("?")) {
            notInLog.add(message);
        }
        Optional<String> reply = found.isPresent()
                ? found.map(Exchange::received).filter(text -> !text.isEmpty())
                : message.contains("?") ? otherwise.apply(message) : Optional.empty();
        return reply.map(text -> Answer.of(text, TIME)).orElseGet(() -> Answer.silence(TIME));
    }

    private Optional<Exchange> found(String message) {
        for (int at = next; at < log.size(); at++) {
            if (log.get(at).sent().equals(message)) {
                next = at + 1;
                return Optional.of(log.get(at));
            }
        }
        for (int at = Math.min(next, log.size()) - 1; at >= 0; at--) {
            if (log.get(at).sent().equals(message)) {
                return Optional.of(log.get(at));
            }
        }
        return Optional.empty();
    }

    /** Questions that were asked and are not in the log, in their order. */
    public synchronized List<String> notInLog() {
        return List.copyOf(notInLog);
    }
}
