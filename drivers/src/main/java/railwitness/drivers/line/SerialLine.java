package railwitness.drivers.line;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;

/**
 * A line over a serial port. A thread of its own reads whatever comes, so deadlines are exact.
 *
 * <p>A late answer never becomes the next one: after a silence, or after something was cut in, the line first makes sure
 * that the instrument is with it again. It sets the event enable register to a number not used before and asks for it
 * back ({@code *ESE n;*ESE?}, IEEE 488.2); whatever comes before that number is thrown away.
 */
public final class SerialLine implements Line {
    private static final Duration CLOSING = Duration.ofSeconds(1);

    private final PortSettings settings;
    private final Wire wire;
    private final Reception reception;
    private final ReentrantLock writing = new ReentrantLock();
    private final UrgentBytes urgent;
    private int nonces;
    private boolean knowsNonces;
    private boolean nothingBegun = true;
    private volatile boolean uncertain;
    private volatile boolean unconfirmed;
    private volatile boolean closed;

    private SerialLine(PortSettings settings, Wire wire) {
        this.settings = settings;
        this.wire = wire;
        this.reception = new Reception(settings, wire);
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
        write(message, reception.cuts());
    }

    @Override
    public String ask(String message, Duration deadline) {
        byte[] reply = exchange(message, deadline, Reception::line);
        String text = new String(reply, StandardCharsets.ISO_8859_1);
        if (text.chars().anyMatch(c -> c < ' ' && c != '\t' || c >= 0x7f && c < 0xa0)) {
            uncertain = true;
            throw LineException.garbled(port(), message, text.replaceAll("[^ -~]", "?"), "plain text");
        }
        return text;
    }

    @Override
    public byte[] askBlock(String message, Duration deadline) {
        return Block.content(port(), message, exchange(message, deadline, Reception::block));
    }

    private byte[] exchange(String message, Duration deadline, Function<Reception, byte[]> complete) {
        long due = System.nanoTime() + deadline.toNanos();
        int cuts = reception.cuts();
        if (reception.discard() && !nothingBegun) {
            uncertain = true;
        }
        nothingBegun = false;
        if (uncertain) {
            resynchronise(message, deadline, due, cuts);
        }
        write(message, cuts);
        return reply(message, deadline, due, cuts, complete);
    }

    private byte[] reply(String message, Duration deadline, long due, int cuts, Function<Reception, byte[]> complete) {
        Reception.End end = reception.await(due, cuts, complete);
        if (end.reply().isPresent()) {
            unconfirmed = false;
            return end.reply().get();
        }
        uncertain = true;
        throw switch (end.why()) {
            case GONE -> LineException.unplugged(port(), message);
            case CUT -> LineException.cutShort(port(), message, reception.text());
            default -> LineException.noAnswer(port(), message, reception.text(), deadline);
        };
    }

    /*
     * An instrument that once gave a number back must do so again. Of one that never did, a silence is taken to mean
     * that it knows no such command and owes no answer either.
     */
    private void resynchronise(String message, Duration deadline, long due, int cuts) {
        long now = System.nanoTime();
        long until = knowsNonces ? due : now + (due - now) / 2;
        int nonce = 129 + nonces++ % 120;
        write("*ESE " + nonce + ";*ESE?", cuts);
        Reception.End end = reception.await(until, cuts, received -> received.lineSaying(nonce));
        if (end.reply().isPresent()) {
            knowsNonces = true;
            uncertain = false;
        } else if (end.why() == Reception.Why.GONE) {
            throw LineException.unplugged(port(), message);
        } else if (end.why() == Reception.Why.CUT) {
            throw LineException.cutShort(port(), message, "");
        } else if (knowsNonces) {
            throw LineException.noAnswer(port(), message, "", deadline);
        } else {
            reception.discard();
            uncertain = false;
        }
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
