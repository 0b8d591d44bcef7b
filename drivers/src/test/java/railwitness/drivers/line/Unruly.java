package railwitness.drivers.line;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;

/**
 * An instrument on a pseudo-terminal that delays, loses, doubles and splits its replies by a seeded draw, and now and then
 * stands still for longer than anybody waits. It keeps the order of its bytes, as any serial device does. Written by hand
 * from IEEE 488.2, with nothing of the program's own in it but the terminal.
 */
final class Unruly implements AutoCloseable {
    private final PseudoTerminal terminal = new PseudoTerminal();
    private final Random random;
    private final UnaryOperator<String> mind;
    private final Thread worker;
    private final double trouble;
    private volatile boolean ended;
    private volatile boolean well = true;
    private int delayed;
    private int lost;
    private int doubled;
    private int split;
    private int frozen;

    /**
     * @param trouble share of the replies that meet each kind of trouble
     * @param mind what it says to one message, or null for nothing
     */
    Unruly(long seed, double trouble, UnaryOperator<String> mind) {
        this.random = new Random(seed);
        this.trouble = trouble;
        this.mind = mind;
        worker = new Thread(this::work, "unruly instrument");
        worker.setDaemon(true);
        worker.start();
    }

    String device() {
        return terminal.device();
    }

    /** From now on things go wrong. */
    void begin() {
        well = false;
    }

    private void work() {
        StringBuilder message = new StringBuilder();
        Deque<String> waiting = new ArrayDeque<>();
        try {
            while (!ended) {
                for (byte b : terminal.read(java.time.Duration.ofMillis(20))) {
                    if (b == '\n' || b == '\r') {
                        waiting.add(message.toString());
                        message.setLength(0);
                    } else {
                        message.append((char) b);
                    }
                }
                while (!waiting.isEmpty()) {
                    String reply = mind.apply(waiting.poll());
                    if (reply != null) {
                        say(reply + "\n");
                    }
                }
            }
        } catch (InterruptedException | IllegalStateException | LineException over) {
            Thread.currentThread().interrupt();
        }
    }

    private boolean happens(double share) {
        return !well && random.nextDouble() < share;
    }

    private void say(String reply) throws InterruptedException {
        if (happens(trouble / 20)) {
            frozen++;
            TimeUnit.MILLISECONDS.sleep(60 + random.nextInt(120));
        } else if (happens(trouble)) {
            delayed++;
            TimeUnit.MILLISECONDS.sleep(1 + random.nextInt(35));
        }
        if (happens(trouble)) {
            lost++;
            return;
        }
        int times = happens(trouble) ? 2 : 1;
        doubled += times - 1;
        String whole = reply.repeat(times);
        if (happens(trouble)) {
            split++;
            int at = 1 + random.nextInt(whole.length() - 1);
            put(whole.substring(0, at));
            TimeUnit.MILLISECONDS.sleep(random.nextInt(30));
            put(whole.substring(at));
        } else {
            put(whole);
        }
    }

    private void put(String text) {
        terminal.write(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    @Override
    public String toString() {
        return delayed + " delayed, " + lost + " lost, " + doubled + " doubled, " + split + " split, " + frozen
                + " times frozen";
    }

    @Override
    public void close() {
        ended = true;
        worker.interrupt();
        try {
            worker.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        terminal.close();
    }
}
