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
 * 488.2). An instrument that does not know it is asked for its identity. As that is the same each time, one identity proves
 * nothing: it may have been sent twice and be older than the doubt. So two must come, the second asked for when the first
 * had come, and then nothing more for a while. A serial device keeps its order; what it said before the doubt is through
 * by then. Of an instrument that knows neither, a silence is taken to mean that it owes no answer.
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
    /** After this silence, or half the patience, a lost identity is not on its way any more. */
    private static final long SILENCE_NANOS = 250_000_000L;
    /** A second identity that was not asked for follows at the latest after this. */
    private static final long HEELS_NANOS = 40_000_000L;
    /** So many identities must come after a doubt, of an instrument that does not take for ever to say who it is. */
    private static final int WANTED = 2;

    private static final long PATIENT_NANOS = 1_000_000_000L;
    /** An instrument that says who it is within this is asked for it after each of its replies. */
    private static final long QUICK_NANOS = 100_000_000L;

    private static final long MOST_CONFIRMING_NANOS = 300_000_000L;

    private final Reception reception;
    private final Writer writer;
    private int used;
    private boolean knowsNumbers;
    private boolean knowsNoNumbers;
    private String identity = "";
    private int owed;
    private int come;
    private boolean begun;
    private long askedNanos;
    private long firstAskedNanos;
    private long identityNanos;
    private Tags tags = new Tags(0);

    /** What follows a reply. */
    enum Heels {
        CLEAN,
        MORE,
        UNKNOWN
    }

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

    /** True where the identity, asked for after each reply, shows whether something followed that reply. */
    boolean confirms() {
        return knowsNoNumbers && !identity.isEmpty() && identityNanos < QUICK_NANOS;
    }

    /** Asks for the identity after a reply that has come, and looks whether anything more comes before it. */
    Heels confirm(int cuts) {
        askIdentity(cuts);
        long within = Math.min(MOST_CONFIRMING_NANOS, Math.max(HEELS_NANOS, AGAIN * identityNanos));
        boolean[] more = {false};
        End end = reception.await(
                askedNanos + within,
                cuts,
                in -> in.lineThat(text -> {
                    boolean itself = text.equals(identity);
                    more[0] |= !itself && !text.equals(IDENTITY);
                    return itself;
                }));
        owed -= end.reply().isPresent() ? 1 : 0;
        return more[0] ? Heels.MORE : end.reply().isPresent() ? Heels.CLEAN : Heels.UNKNOWN;
    }

    private void askIdentity(int cuts) {
        writer.write(IDENTITY, cuts);
        owed++;
        askedNanos = System.nanoTime();
    }

    private Why byIdentity(long due, int cuts) {
        long patience = due - System.nanoTime();
        if (!begun || owed == 0 || System.nanoTime() - askedNanos > Math.max(AGAIN_NANOS, AGAIN * patience)) {
            askIdentity(cuts);
            begun = true;
        }
        End end = awaitIdentity(due, cuts);
        while (end.reply().isPresent()) {
            owed = Math.max(0, owed - 1);
            come++;
            if (come < (identityNanos < PATIENT_NANOS ? WANTED : 1)) {
                askIdentity(cuts);
                end = awaitIdentity(due, cuts);
            } else {
                end = awaitIdentity(System.nanoTime() + silence(patience), cuts);
                if (end.why() == Why.DUE) {
                    owed = 0;
                    come = 0;
                    begun = false;
                    return Why.COMPLETE;
                }
            }
        }
        return end.why();
    }

    private long silence(long patience) {
        long lost = Math.max(Math.min(SILENCE_NANOS, patience / 2), identityNanos * 3 / 2);
        return Math.max(HEELS_NANOS, owed > 0 ? lost : 0);
    }

    private End awaitIdentity(long due, int cuts) {
        return reception.await(due, cuts, come -> come.lineThat(identity::equals));
    }
}
