package railwitness.drivers.line;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * A line that replays a recorded dialogue. The record is text: a line that begins with {@code > } was sent, one that
 * begins with {@code < } came back, {@code ~} alone means that nothing came; {@code #} begins a remark. What is sent must be what the record has
 * next, else the call fails with both texts.
 */
public final class ReplayLine implements Line {
    private final String port;
    private final Deque<String> record = new ArrayDeque<>();
    private final List<String> cuts = new ArrayList<>();

    public ReplayLine(String port, String dialogue) {
        this.port = port;
        dialogue.lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty() && !line.startsWith("#"))
                .forEach(record::add);
    }

    @Override
    public String port() {
        return port;
    }

    @Override
    public void send(String message) {
        String next = record.isEmpty() ? "the end" : record.poll();
        if (!next.equals("> " + message)) {
            throw new IllegalStateException(port + ": sent '" + message + "', but the record has " + next);
        }
    }

    @Override
    public String ask(String message, Duration deadline) {
        send(message);
        String next = record.isEmpty() ? "the end" : record.poll();
        if (next.equals("~")) {
            throw LineException.noAnswer(port, message, "", deadline);
        }
        if (!next.startsWith("<")) {
            throw new IllegalStateException(port + ": '" + message + "' wants a reply, but the record has " + next);
        }
        return next.substring(1).stripLeading();
    }

    @Override
    public byte[] askBlock(String message, Duration deadline) {
        return Block.content(port, message, ask(message, deadline).getBytes(StandardCharsets.ISO_8859_1));
    }

    @Override
    public boolean cutIn(byte[] bytes) {
        cuts.add(new String(bytes, StandardCharsets.ISO_8859_1));
        return true;
    }

    /** What was cut in, in order. */
    public List<String> cuts() {
        return List.copyOf(cuts);
    }

    /** What of the record has not been replayed. */
    public List<String> rest() {
        return List.copyOf(record);
    }

    @Override
    public void close() {
        // nothing is held open
    }
}
