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
 * what it got in the log where it stands next there; else what {@code otherwise} has for it; else what it got at its next
 * place, and after that what it got last. What was answered by silence then is now.
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

    /** @param otherwise the reply to a question that does not stand next in the log; empty where it has none */
    public LoggedInstrument(List<Exchange> log, Function<String, Optional<String>> otherwise) {
        this.log = List.copyOf(log);
        this.otherwise = otherwise;
    }

    @Override
    public synchronized Answer hear(String message) {
        return reply(message).map(text -> Answer.of(text, TIME)).orElseGet(() -> Answer.silence(TIME));
    }

    private Optional<String> reply(String message) {
        boolean atOnce = next < log.size() && log.get(next).sent().equals(message);
        if (!atOnce && message.contains("?")) {
            Optional<String> other = otherwise.apply(message);
            if (other.isPresent()) {
                return other;
            }
        }
        Optional<Exchange> found = found(message);
        if (found.isEmpty() && message.contains("?")) {
            notInLog.add(message);
        }
        return found.map(Exchange::received).filter(text -> !text.isEmpty());
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
