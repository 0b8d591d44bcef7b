package railwitness.safety.guardian;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import railwitness.drivers.line.PseudoTerminal;

/** The far end of a pseudo-terminal: an instrument's output that can be on, with the time of everything it heard. */
final class FarEnd implements AutoCloseable {
    record Heard(String message, long firstByteNanos) {}

    private final PseudoTerminal terminal = new PseudoTerminal();
    private final List<Heard> heard = new ArrayList<>();
    private final StringBuilder raw = new StringBuilder();
    private final StringBuilder message = new StringBuilder();
    private final Thread reader = new Thread(this::serve, "far end");
    private long firstByte;
    private volatile boolean ended;
    private boolean on = true;
    private int ignoresOff;

    FarEnd() {
        reader.setDaemon(true);
        reader.start();
    }

    String device() {
        return terminal.device();
    }

    synchronized FarEnd ignoringOff(int times) {
        ignoresOff = times;
        return this;
    }

    synchronized boolean isOn() {
        return on;
    }

    synchronized String raw() {
        return raw.toString();
    }

    synchronized List<String> messages() {
        return heard.stream().map(Heard::message).toList();
    }

    /** Waits for a message; throws when it does not come in time. */
    synchronized Heard await(Predicate<String> wanted, Duration longest) throws InterruptedException {
        long until = System.nanoTime() + longest.toNanos();
        while (true) {
            for (Heard one : heard) {
                if (wanted.test(one.message())) {
                    return one;
                }
            }
            long left = (until - System.nanoTime()) / 1_000_000;
            if (left <= 0) {
                throw new AssertionError("did not come; heard only " + heard);
            }
            wait(left);
        }
    }

    private void serve() {
        while (!ended) {
            byte[] bytes = terminal.read(Duration.ofMillis(20));
            long now = System.nanoTime();
            synchronized (this) {
                for (byte b : bytes) {
                    take((char) b, now);
                }
                notifyAll();
            }
        }
    }

    private void take(char next, long now) {
        raw.append(next);
        if (message.isEmpty()) {
            firstByte = now;
        }
        if (next != '\n') {
            message.append(next);
        } else if (!message.isEmpty()) {
            heard.add(new Heard(message.toString(), firstByte));
            act(message.toString());
            message.setLength(0);
        }
    }

    private void act(String text) {
        if (text.equals("OUTP OFF")) {
            on = on && ignoresOff > 0;
            ignoresOff--;
        } else if (text.equals("OUTP ON")) {
            on = true;
        } else if (text.equals("OUTP?")) {
            terminal.write((on ? "1\n" : "0\n").getBytes(StandardCharsets.US_ASCII));
        }
    }

    @Override
    public void close() {
        ended = true;
        try {
            reader.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        terminal.close();
    }
}
