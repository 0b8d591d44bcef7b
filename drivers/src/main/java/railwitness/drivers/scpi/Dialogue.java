package railwitness.drivers.scpi;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.Supplier;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.line.Visible;
import railwitness.drivers.time.Scheduler;

/**
 * The talk with one instrument over its line. Every exchange goes to the log; every exception is led by the
 * instrument's name. For one thread at a time, but {@link #cutIn} may come from any.
 */
public final class Dialogue {
    /** A full queue of a real instrument holds 20 to 30 entries; one that never ends is broken. */
    private static final int MOST_ERRORS = 64;

    /** A longer reply is kept by its beginning and its length. */
    private static final int LONGEST_KEPT = 2000;

    private final String instrument;
    private final Line line;
    private final Scheduler scheduler;
    private final ExchangeLog log;
    private String errorQuery;
    private final Duration patience;
    private volatile long quickestNanos = Long.MAX_VALUE;

    /**
     * @param errorQuery asks for the next entry of the error queue; empty where there is none
     * @param patience longest wait for an ordinary answer
     */
    public Dialogue(
            String instrument, Line line, Scheduler scheduler, ExchangeLog log, String errorQuery, Duration patience) {
        this.instrument = instrument;
        this.line = line;
        this.scheduler = scheduler;
        this.log = log;
        this.errorQuery = errorQuery;
        this.patience = patience;
    }

    public String instrument() {
        return instrument;
    }

    public String port() {
        return line.port();
    }

    public Duration patience() {
        return patience;
    }

    /** The shortest time in which a question was answered, its line back in step and confirmed; zero before the first. */
    public Duration quickestAnswer() {
        return quickestNanos == Long.MAX_VALUE ? Duration.ZERO : Duration.ofNanos(quickestNanos);
    }

    /** False where a refused setting shows in its read-back only. */
    public boolean hasErrorQueue() {
        return !errorQuery.isEmpty();
    }

    /** From now on the instrument is not asked for errors: it has no such queue. */
    public void withoutErrorQueue() {
        errorQuery = "";
    }

    /** The last reply cannot belong to its question: the line is brought back in step before the next. */
    public void doubt() {
        line.doubt();
    }

    /** Learns how the line can be brought back in step; see {@link Line#getToKnow}. */
    public void getToKnow(String identity, Duration deadline) {
        line.getToKnow(identity, deadline);
    }

    /** The session's clock, ns. */
    public long nowNanos() {
        return scheduler.nowNanos();
    }

    /** Sends without asking for errors. */
    public void send(String message) {
        logged(message, false, () -> {
            line.send(message);
            return "";
        });
    }

    /** Asks with the ordinary patience. */
    public String ask(String message) {
        return ask(message, patience);
    }

    public String ask(String message, Duration deadline) {
        return logged(message, false, () -> line.ask(message, deadline));
    }

    /** A question of the regular round. */
    public String poll(String message, Duration deadline) {
        return logged(message, true, () -> line.ask(message, deadline));
    }

    /** Asks for a definite block; returns its content. */
    public byte[] askBlock(String message, Duration deadline) {
        byte[][] block = new byte[1][];
        logged(message, false, () -> {
            block[0] = line.askBlock(message, deadline);
            return "#" + block[0].length;
        });
        return block[0];
    }

    /** Asks once more where no answer comes: one reply that is lost costs its wait, not the run. */
    public String askTwice(String message) {
        try {
            return ask(message);
        } catch (LineException first) {
            if (first.trouble() != Trouble.NO_ANSWER) {
                throw first;
            }
            return ask(message);
        }
    }

    /** Asks for a number that must be one; asked once more where no answer comes. */
    public double askNumber(String message) {
        String reply = askTwice(message);
        try {
            if (Numeric.of(reply) instanceof Numeric.Value number) {
                return number.value();
            }
        } catch (IllegalArgumentException notANumber) {
            // said below, like an overload
        }
        doubt();
        throw LineException.garbled(port(), message, reply, "a number").of(instrument);
    }

    /**
     * Sends settings one by one and empties the error queue after each.
     *
     * @throws LineException REFUSED with the entries, when there are any
     */
    public void set(List<String> messages) {
        for (String message : messages) {
            set(message);
        }
    }

    /** Sends one setting and empties the error queue. */
    public void set(String message) {
        send(message);
        List<ErrorEntry> errors = drained(() -> askTwice(errorQuery));
        if (!errors.isEmpty()) {
            throw refused(message, errors);
        }
    }

    private LineException refused(String message, List<ErrorEntry> errors) {
        String said =
                String.join("; ", errors.stream().map(ErrorEntry::toString).toList());
        LineException refused = new LineException(
                Trouble.REFUSED,
                instrument + " on " + port() + ": '" + message + "' was refused: " + said
                        + "; is its range wide enough, and is it the instrument the bench sheet says?",
                message,
                said);
        log.ended(new Exchange(nowNanos(), instrument, false, message, said, refused.getMessage()));
        return refused;
    }

    /** Reads the error queue until it is empty; returns what was in it, oldest first. */
    public List<ErrorEntry> drain() {
        return drained(() -> ask(errorQuery));
    }

    private List<ErrorEntry> drained(Supplier<String> asked) {
        List<ErrorEntry> errors = new ArrayList<>();
        while (hasErrorQueue() && errors.size() < MOST_ERRORS) {
            ErrorEntry entry = nextError(asked);
            if (entry.isNone()) {
                return errors;
            }
            errors.add(entry);
        }
        if (errors.isEmpty()) {
            return errors;
        }
        throw LineException.garbled(port(), errorQuery, errors.get(0).reply(), "the end of the error queue")
                .of(instrument);
    }

    private ErrorEntry nextError(Supplier<String> asked) {
        String reply = asked.get();
        try {
            return ErrorEntry.of(reply);
        } catch (IllegalArgumentException e) {
            doubt();
            throw LineException.garbled(port(), errorQuery, reply, "an entry of the error queue")
                    .of(instrument);
        }
    }

    /**
     * Opens the line anew and asks the instrument who it is.
     *
     * @throws LineException when the port is not there or nobody answers
     */
    public String reopen() {
        long begun = nowNanos();
        try {
            line.reopen();
        } catch (LineException e) {
            LineException named = e.of(instrument);
            log.ended(new Exchange(begun, instrument, false, "", "", named.getMessage()));
            throw named;
        }
        return ask("*IDN?");
    }

    /** Lets go of the port: another instrument stands behind it now. The next {@link #reopen} opens it again. */
    public void letGo() {
        line.backTo(line.port());
    }

    /** Other ports on which the same instrument may have come back. */
    public List<String> elsewhere() {
        return line.elsewhere();
    }

    /**
     * Opens the line on another port and asks who is there.
     *
     * @param same whether that answer is the instrument's own; the line goes back to its port where it is not
     * @return true when it was found there
     */
    public boolean foundAt(String otherPort, Predicate<String> same) {
        String own = line.port();
        try {
            line.reopenAt(otherPort);
        } catch (LineException e) {
            return false;
        }
        try {
            if (same.test(ask("*IDN?"))) {
                return true;
            }
        } catch (LineException e) {
            // whoever is there does not answer: not the one that is looked for
        }
        line.backTo(own);
        return false;
    }

    /** Puts the bytes on the wire at once; false when the port is known to be gone. */
    public boolean cutIn(byte[] bytes) {
        long begun = nowNanos();
        boolean sent = line.cutIn(bytes);
        String text = new String(bytes, StandardCharsets.ISO_8859_1).strip().replaceAll("[\r\n]+", " | ");
        log.ended(new Exchange(begun, instrument, false, text, "", sent ? "" : "the port has gone"));
        return sent;
    }

    private String logged(String message, boolean polling, Supplier<String> exchange) {
        long begun = nowNanos();
        try {
            String reply = exchange.get();
            if (!reply.isEmpty()) {
                quickestNanos = Math.min(quickestNanos, nowNanos() - begun);
            }
            logUnasked();
            log.ended(new Exchange(begun, instrument, polling, message, bounded(reply), ""));
            return reply;
        } catch (LineException e) {
            logUnasked();
            LineException named = e.of(instrument);
            log.ended(new Exchange(begun, instrument, polling, message, bounded(e.received()), named.getMessage()));
            throw named;
        }
    }

    private void logUnasked() {
        line.thrownAway()
                .forEach(late -> log.ended(new Exchange(
                        nowNanos(), instrument, false, "", late, "came too late or unasked, and was thrown away")));
    }

    private static String bounded(String reply) {
        return reply.length() <= LONGEST_KEPT ? reply : Visible.text(reply);
    }
}
