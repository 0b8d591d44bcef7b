package railwitness.drivers.line;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.function.Predicate;
import railwitness.drivers.line.Reception.End;
import railwitness.drivers.line.Reception.Why;

/**
 * Brings a line back in step: a question whose answer can be nothing else is asked, and all that comes before it is
 * thrown away.
 *
 * <p>Best is a number not used before, written to the event enable register and asked back ({@code *ESE n;*ESE?}, IEEE
 * 488.2). An instrument that does not know it is asked for its identity. As that is the same each time, it is asked again
 * only when the last one was not answered for long, and what may still be on its way is then waited for as well. Of an
 * instrument that knows neither, a silence is taken to mean that it owes no answer.
 */
final class InStep {
    static final String IDENTITY = "*IDN?";
    /** Numbers with bit 7 set ask for nothing that a bench instrument does of itself. */
    private static final int FIRST = 129;

    private static final int NUMBERS = 120;
    /** An identity that has not come for so many times the patience is asked for again. */
    private static final int AGAIN = 4;

    private static final long AGAIN_NANOS = 500_000_000L;
    private static final long SLOWEST_NANOS = 8_000_000_000L;
    /** After this silence, or half the patience, a second identity is not on its way any more. */
    private static final long SILENCE_NANOS = 250_000_000L;

    private final Reception reception;
    private final Writer writer;
    private int used;
    private boolean knowsNumbers;
    private boolean knowsNoNumbers;
    private String identity = "";
    private int owed;
    private long askedNanos;
    private long firstAskedNanos;
    private long identityNanos;
    private Tags tags = new Tags(0);

    /** Writes a message unless something was cut in since. */
    @FunctionalInterface
    interface Writer {
        void write(String message, int cuts);
    }

    InStep(Reception reception, Writer writer) {
        this.reception = reception;
        this.writer = writer;
    }

    /** The marks of the present step. */
    Tags tags() {
        return tags;
    }

    /** True for the question who it is, as long as that is not known. */
    boolean isFirstMeeting(String message) {
        return message.equals(IDENTITY) && identity.isEmpty();
    }

    /** True where the instrument is known to keep no number. */
    boolean isByIdentity() {
        return knowsNoNumbers;
    }

    /** True while an identity is on its way that brings the line in step; what has come of it must not be lost. */
    boolean awaitsIdentity() {
        return knowsNoNumbers && owed > 0;
    }

    /** A question that is about to be sent: how long an identity takes is counted from the first time it is asked for. */
    void asking(String message) {
        if (message.equals(IDENTITY)) {
            owed++;
            askedNanos = System.nanoTime();
            firstAskedNanos = firstAskedNanos == 0 ? askedNanos : firstAskedNanos;
        }
    }

    /** Its answer has come. */
    void answered(String message) {
        if (isFirstMeeting(message)) {
            identityNanos = System.nanoTime() - firstAskedNanos;
        }
        if (message.equals(IDENTITY)) {
            owed--;
        }
    }

    /** How much longer than the patience it may take until an identity has come, ns; zero where that is not asked for. */
    long slownessNanos(long patienceNanos) {
        boolean slow = knowsNoNumbers && 2 * identityNanos > patienceNanos;
        return slow ? Math.min(2 * identityNanos, SLOWEST_NANOS) : 0;
    }

    /** True for a line that is only the late answer to a question of this class. */
    boolean isStale(String line, String sent) {
        boolean stale = !identity.isEmpty()
                && !sent.startsWith(IDENTITY)
                && line.strip().equals(identity);
        owed -= stale && owed > 0 ? 1 : 0;
        return stale;
    }

    /**
     * Finds out which question serves, and tries whether several are answered in one message.
     *
     * @return true when they are, and the line is in step
     */
    boolean learn(String ownIdentity, Duration deadline, int cuts) {
        identity = ownIdentity.strip();
        long due = System.nanoTime() + deadline.toNanos();
        if (byNumber(due, cuts) != Why.COMPLETE) {
            knowsNoNumbers = true;
            return false;
        }
        int number = number();
        writer.write("*ESE?;*ESE?", cuts);
        Predicate<String> twice = line -> line.matches("\\+?0*" + number + "\\s*;\\s*\\+?0*" + number);
        End end = reception.await(due, cuts, come -> come.line());
        return end.reply()
                .filter(line -> twice.test(new String(line, StandardCharsets.ISO_8859_1).strip()))
                .isPresent();
    }

    /** COMPLETE when the line is in step again, else why it is not. */
    Why regain(long due, int cuts) {
        if (knowsNumbers) {
            return byNumber(due, cuts);
        }
        if (knowsNoNumbers) {
            return byIdentity(due, cuts);
        }
        long now = System.nanoTime();
        Why why = byNumber(now + (due - now) / 2, cuts);
        if (why == Why.DUE) {
            reception.discard();
            return Why.COMPLETE;
        }
        return why;
    }

    private int number() {
        return FIRST + (used + NUMBERS - 1) % NUMBERS;
    }

    private Why byNumber(long due, int cuts) {
        used++;
        int number = number();
        writer.write("*ESE " + number + ";*ESE?", cuts);
        End end = reception.await(due, cuts, come -> come.lineThat(line -> line.matches("\\+?0*" + number)));
        if (end.reply().isPresent()) {
            knowsNumbers = true;
            tags = new Tags(number);
        }
        return end.why();
    }

    private Why byIdentity(long due, int cuts) {
        long now = System.nanoTime();
        long patience = due - now;
        if (owed == 0 || now - askedNanos > Math.max(AGAIN_NANOS, AGAIN * patience)) {
            writer.write(IDENTITY, cuts);
            owed++;
            askedNanos = now;
        }
        End end = awaitIdentity(due, cuts);
        while (end.reply().isPresent() && owed > 0) {
            owed--;
            long most = Math.max(Math.min(SILENCE_NANOS, patience / 2), identityNanos * 3 / 2);
            long silence = Math.min(due, System.nanoTime() + most);
            end = owed > 0 ? awaitIdentity(silence, cuts) : end;
            if (end.why() == Why.DUE && silence < due) {
                owed = 0;
                return Why.COMPLETE;
            }
        }
        return end.why();
    }

    private End awaitIdentity(long due, int cuts) {
        return reception.await(due, cuts, come -> come.lineThat(identity::equals));
    }
}
