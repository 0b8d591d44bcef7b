package railwitness.drivers.line;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;

/**
 * A line over a serial port. A thread of its own reads whatever comes, so deadlines are exact.
 *
 * <p>A reply never becomes that of another question. After a silence, a reply that is spoilt or too long, or after
 * something was cut in, the line is first brought back in step ({@link InStep}); whatever comes before is thrown away.
 * Where the instrument answers several questions in one message (IEEE 488.2), every reply bears a mark of its own question
 * ({@link Tags}). Where it does not, it is asked for its identity after each reply, and a reply counts only when nothing
 * else comes before that; where it is slow in saying who it is, when nothing follows at the heels of the reply.
 */
public final class SerialLine implements Line {
    private static final Duration CLOSING = Duration.ofSeconds(1);
    /** A second reply to the same question follows the first within a few characters' time. */
    private static final long HEELS_NANOS = 5_000_000;
    /** Of an instrument that is slow in saying who it is, a gap inside of what follows is waited for as well. */
    private static final long LONG_HEELS_NANOS = 40_000_000;
    /** Wait for the echo of a command on a line that echoes. */
    private static final long ECHO_NANOS = 200_000_000;
    /** An instrument that passed the trial of the marks and then leaves them out so often in turn does not know them. */
    private static final int MOST_UNMARKED = 2;

    private final PortSettings settings;
    private final Wire wire;
    private final Unasked unasked = new Unasked();
    private final Reception reception;
    private final InStep inStep;
    private final ReentrantLock writing = new ReentrantLock();
    private final UrgentBytes urgent;
    private boolean marks;
    private boolean echoes;
    private int unmarked;
    private boolean nothingBegun = true;
    private volatile boolean uncertain;
    private volatile boolean unconfirmed;
    private volatile boolean closed;

    private SerialLine(PortSettings settings, Wire wire) {
        this.settings = settings;
        this.wire = wire;
        this.reception = new Reception(settings, wire, unasked::add);
        this.inStep = new InStep(reception, this::write);
        this.urgent = new UrgentBytes(settings.port(), writing, this::writeUrgent);
    }

    /** @throws LineException when there is no such port, it is in use, or may not be opened */
    public static SerialLine open(PortSettings settings) {
        return new SerialLine(settings, Wire.open(settings, false));
    }

    /** Opens a port that another process may hold at the same time. */
    public static SerialLine openShared(PortSettings settings) {
        return new SerialLine(settings, Wire.open(settings, true));
    }

    @Override
    public String port() {
        return settings.port();
    }

    @Override
    public void send(String message) {
        unconfirmed = true;
        int cuts = reception.cuts();
        write(message, cuts);
        if (echoes) {
            reception.await(System.nanoTime() + ECHO_NANOS, cuts, come -> come.lineThat(message::equals));
        }
    }

    @Override
    public String ask(String message, Duration deadline) {
        Asked asked = begin(
                new Asked(message, deadline, reception.cuts()), Reception.LONGEST_LINE, marks && Tags.fits(message));
        if (marks && Tags.fits(message)) {
            return marked(asked);
        }
        inStep.asking(message);
        write(message, asked.cuts());
        String reply = text(asked, reply(asked, come -> own(come, message)));
        inStep.answered(message);
        boolean common = message.startsWith("*");
        InStep.Heels heels = inStep.confirms() && !common ? inStep.confirm(asked.cuts()) : heels();
        uncertain |= heels != InStep.Heels.CLEAN;
        if (heels == InStep.Heels.MORE && !common) {
            throw LineException.outOfStep(port(), message, reply + "\n" + reception.text());
        }
        return reply;
    }

    private InStep.Heels heels() {
        boolean quiet = reception.quiet(inStep.isByIdentity() ? LONG_HEELS_NANOS : HEELS_NANOS);
        return quiet ? InStep.Heels.CLEAN : InStep.Heels.MORE;
    }

    /* The shortest way to learn that a question is unknown: its mark comes back alone. */
    private String marked(Asked asked) {
        String message = inStep.tags().marked(asked.message());
        write(message, asked.cuts());
        boolean[] bare = {false};
        String reply;
        try {
            reply = text(asked, reply(asked, come -> ownMarked(come, message, bare)));
        } catch (LineException e) {
            marks = !(e.trouble() == LineException.Trouble.NO_ANSWER && bare[0] && ++unmarked >= MOST_UNMARKED);
            throw e;
        }
        unmarked = 0;
        if (reply.isEmpty()) {
            throw LineException.passedOver(port(), asked.message());
        }
        return reply;
    }

    private String text(Asked asked, byte[] reply) {
        String text = new String(reply, StandardCharsets.ISO_8859_1);
        if (text.chars().anyMatch(c -> c < ' ' && c != '\t' || c >= 0x7f && c < 0xa0)) {
            uncertain = true;
            throw LineException.garbled(port(), asked.message(), text.replaceAll("[^ -~]", "?"), "plain text");
        }
        return text;
    }

    /*
     * A line that echoes says the question first; it is known by the question that no instrument answers with itself. The
     * identity, where it brings the line in step, is no reading.
     */
    private byte[] own(Reception come, String sent) {
        byte[] line = come.line();
        while (line != null) {
            String text = new String(line, StandardCharsets.ISO_8859_1);
            if (text.equals(sent) && (echoes || sent.equals(InStep.IDENTITY))) {
                echoes = true;
            } else if (inStep.isStale(text, sent)) {
                unasked.add(text);
            } else {
                return line;
            }
            line = come.line();
        }
        return null;
    }

    private byte[] ownMarked(Reception come, String sent, boolean[] bare) {
        for (byte[] line = own(come, sent); line != null; line = own(come, sent)) {
            String text = new String(line, StandardCharsets.ISO_8859_1);
            Optional<String> own = inStep.tags().own(text);
            if (own.isPresent()) {
                return own.get().getBytes(StandardCharsets.ISO_8859_1);
            }
            bare[0] |= Tags.unmarked(text);
            unasked.add(text);
        }
        return null;
    }

    @Override
    public byte[] askBlock(String message, Duration deadline) {
        int longest = Block.LONGEST + Reception.LONGEST_LINE;
        Asked asked = begin(new Asked(message, deadline, reception.cuts()), longest, false);
        write(message, asked.cuts());
        return Block.content(port(), message, reply(asked, Reception::block));
    }

    /** One question under way: until when its reply is waited for, and what was cut in before it. */
    private record Asked(String message, Duration deadline, long due, int cuts) {
        Asked(String message, Duration deadline, int cuts) {
            this(message, deadline, System.nanoTime() + deadline.toNanos(), cuts);
        }
    }

    /**
     * Brings the line in step where that is needed. Who it is may be asked all the same of one that has not said it yet:
     * no other answer is like it. Where the identity does it, the question has its deadline whole after that.
     *
     * @param willBeMarked what came unasked then does no harm, unless it is the beginning of a line: without that, the rest
     *     may look like a reply with its mark
     */
    private Asked begin(Asked asked, int longest, boolean willBeMarked) {
        reception.bound(longest);
        if (inStep.isFirstMeeting(asked.message())) {
            nothingBegun = false;
            return asked;
        }
        boolean coming = uncertain && inStep.awaitsIdentity();
        boolean cutOff = reception.isMidLine();
        if (!coming && reception.discard() && !nothingBegun && (!willBeMarked || cutOff)) {
            uncertain = true;
        }
        nothingBegun = false;
        if (!uncertain) {
            return asked;
        }
        long slow = inStep.slownessNanos(asked.due() - System.nanoTime());
        Reception.Why why = inStep.regain(asked.due() + slow, asked.cuts());
        if (why != Reception.Why.COMPLETE) {
            throw failed(asked, why);
        }
        uncertain = false;
        return inStep.isByIdentity() ? new Asked(asked.message(), asked.deadline(), asked.cuts()) : asked;
    }

    private byte[] reply(Asked asked, Function<Reception, byte[]> complete) {
        Reception.End end = reception.await(asked.due(), asked.cuts(), complete);
        if (end.reply().isPresent()) {
            unconfirmed = false;
            return end.reply().get();
        }
        uncertain = true;
        throw failed(asked, end.why());
    }

    private LineException failed(Asked asked, Reception.Why why) {
        return switch (why) {
            case GONE -> LineException.unplugged(port(), asked.message());
            case CUT ->
                LineException.cutShort(port(), asked.message(), reception.text().strip());
            case FLOODED -> LineException.endless(port(), asked.message(), Reception.LONGEST_LINE);
            default -> LineException.noAnswer(port(), asked.message(), reception.text(), asked.deadline());
        };
    }

    @Override
    public void getToKnow(String identity, Duration deadline) {
        marks = inStep.learn(identity, deadline, reception.cuts());
        uncertain = !marks;
    }

    @Override
    public void doubt() {
        uncertain = true;
    }

    @Override
    public List<String> thrownAway() {
        return unasked.taken();
    }

    private void write(String message, int cuts) {
        byte[] bytes = (message + settings.terminator()).getBytes(StandardCharsets.ISO_8859_1);
        writing.lock();
        try {
            if (closed) {
                throw LineException.closed(port(), message);
            }
            urgent.flush();
            if (reception.cuts() != cuts) {
                throw LineException.cutShort(port(), message, "");
            }
            if (reception.gone() || !wire.write(bytes)) {
                throw LineException.unplugged(port(), message);
            }
        } finally {
            writing.unlock();
        }
    }

    @Override
    public boolean cutIn(byte[] bytes) {
        uncertain = true;
        unconfirmed = true;
        urgent.add(bytes);
        reception.cut();
        return !closed && !reception.gone();
    }

    private void writeUrgent(byte[] bytes) {
        if (!closed && !reception.gone() && !wire.write(bytes)) {
            reception.lose();
        }
    }

    /**
     * Closing throws away what has not left yet. So the instrument is asked to say that it is done ({@code *OPC?}); where
     * it does not answer within a second, the bytes are given the time they need at this baud rate.
     */
    @Override
    public void close() {
        if (closed) {
            return;
        }
        if (unconfirmed && !reception.gone()) {
            confirm();
        }
        writing.lock();
        try {
            urgent.flush();
            closed = true;
        } finally {
            writing.unlock();
        }
        urgent.end();
        reception.end();
        wire.close();
    }

    private void confirm() {
        try {
            ask("*OPC?", CLOSING);
        } catch (LineException silent) {
            try {
                wire.awaitSent(CLOSING.toMillis());
                TimeUnit.MILLISECONDS.sleep(64 * 11 * 1000L / settings.baud());
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
