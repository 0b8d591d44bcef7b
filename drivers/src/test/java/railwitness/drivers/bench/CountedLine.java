package railwitness.drivers.bench;

import java.time.Duration;
import java.util.List;
import railwitness.drivers.line.Line;

/** A line that says when it is closed. */
record CountedLine(Line line, Runnable closed) implements Line {
    @Override
    public String port() {
        return line.port();
    }

    @Override
    public void send(String message) {
        line.send(message);
    }

    @Override
    public String ask(String message, Duration deadline) {
        return line.ask(message, deadline);
    }

    @Override
    public byte[] askBlock(String message, Duration deadline) {
        return line.askBlock(message, deadline);
    }

    @Override
    public boolean cutIn(byte[] bytes) {
        return line.cutIn(bytes);
    }

    @Override
    public void getToKnow(String identity, Duration deadline) {
        line.getToKnow(identity, deadline);
    }

    @Override
    public void doubt() {
        line.doubt();
    }

    @Override
    public List<String> thrownAway() {
        return line.thrownAway();
    }

    @Override
    public void close() {
        line.close();
        closed.run();
    }
}
