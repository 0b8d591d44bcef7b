package railwitness.drivers.line;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Lets a peer be reached over a pseudo-terminal: one thread reads messages ended by LF, CR or both, lets the peer hear
 * them, and writes each reply, ended as told, when it is complete. A further message is read meanwhile no sooner than
 * the reply has gone, as a plain instrument does. Clients may come and go.
 */
public final class PeerTerminal implements AutoCloseable {
    private static final Duration LOOK = Duration.ofMillis(20);

    private final PseudoTerminal terminal = new PseudoTerminal();
    private final ByteArrayOutputStream message = new ByteArrayOutputStream();
    private final Peer peer;
    private final byte[] terminator;
    private final Thread reader;
    private volatile boolean ended;

    /**
     * Opens the terminal and starts serving.
     *
     * @param terminator ends each reply: LF, CR or CR LF
     */
    public PeerTerminal(String name, Peer peer, String terminator) {
        this.peer = peer;
        this.terminator = terminator.getBytes(StandardCharsets.US_ASCII);
        reader = new Thread(this::serve, "far end of " + name);
        reader.setDaemon(true);
        reader.start();
    }

    /** Path to open in the place of a serial port. */
    public String device() {
        return terminal.device();
    }

    private void serve() {
        try {
            while (!ended) {
                for (byte b : terminal.read(LOOK)) {
                    take(b);
                }
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        } catch (LineException unplugged) {
            terminal.close();
        }
    }

    private void take(byte b) throws InterruptedException {
        if (b != '\n' && b != '\r') {
            message.write(b);
            return;
        }
        String text = message.toString(StandardCharsets.ISO_8859_1);
        message.reset();
        if (!text.isBlank()) {
            answer(text);
        }
    }

    private void answer(String text) throws InterruptedException {
        long heard = System.nanoTime();
        Answer answer = peer.hear(text);
        long rest = answer.complete().toNanos() - (System.nanoTime() - heard);
        if (rest > 0) {
            TimeUnit.NANOSECONDS.sleep(rest);
        }
        Optional<byte[]> reply = answer.reply();
        if (reply.isPresent()) {
            terminal.write(terminated(reply.get()));
        }
    }

    private byte[] terminated(byte[] reply) {
        byte[] whole = new byte[reply.length + terminator.length];
        System.arraycopy(reply, 0, whole, 0, reply.length);
        System.arraycopy(terminator, 0, whole, reply.length, terminator.length);
        return whole;
    }

    /** Stops serving and takes the device away. */
    @Override
    public void close() {
        ended = true;
        reader.interrupt();
        try {
            reader.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        terminal.close();
    }
}
