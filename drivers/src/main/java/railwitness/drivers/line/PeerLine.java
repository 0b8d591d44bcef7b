package railwitness.drivers.line;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import railwitness.drivers.time.VirtualScheduler;

/** A line inside the process: the peer answers at once and the virtual clock is moved on by what the exchange takes. */
public final class PeerLine implements Line {
    private final String port;
    private final Peer peer;
    private final VirtualScheduler scheduler;
    private volatile boolean closed;

    public PeerLine(String port, Peer peer, VirtualScheduler scheduler) {
        this.port = port;
        this.peer = peer;
        this.scheduler = scheduler;
    }

    @Override
    public String port() {
        return port;
    }

    @Override
    public void send(String message) {
        checkOpen(message);
        scheduler.spend(peer.hear(message).complete());
    }

    @Override
    public String ask(String message, Duration deadline) {
        return new String(reply(message, deadline), StandardCharsets.ISO_8859_1);
    }

    @Override
    public byte[] askBlock(String message, Duration deadline) {
        return Block.content(port, message, reply(message, deadline));
    }

    private byte[] reply(String message, Duration deadline) {
        checkOpen(message);
        Answer answer = peer.hear(message);
        if (answer.reply().isEmpty() || answer.complete().compareTo(deadline) > 0) {
            scheduler.spend(deadline);
            throw LineException.noAnswer(port, message, "", deadline);
        }
        scheduler.spend(answer.complete());
        return answer.reply().get();
    }

    private void checkOpen(String message) {
        if (closed) {
            throw LineException.closed(port, message);
        }
    }

    @Override
    public boolean cutIn(byte[] bytes) {
        if (closed) {
            return false;
        }
        try {
            new String(bytes, StandardCharsets.ISO_8859_1)
                    .lines()
                    .filter(message -> !message.isBlank())
                    .forEach(peer::hear);
            return true;
        } catch (LineException gone) {
            return false;
        }
    }

    /** The peer is there or not by itself. */
    @Override
    public void reopen() {
        checkOpen("");
    }

    @Override
    public void close() {
        closed = true;
    }
}
