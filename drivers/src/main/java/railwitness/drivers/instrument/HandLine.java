package railwitness.drivers.instrument;

import java.time.Duration;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;

/** The line of an instrument that has none: nothing goes over it. */
final class HandLine implements Line {
    static final String PORT = "by hand";

    @Override
    public String port() {
        return PORT;
    }

    @Override
    public void send(String message) {
        throw LineException.closed(PORT, message);
    }

    @Override
    public String ask(String message, Duration deadline) {
        throw LineException.closed(PORT, message);
    }

    @Override
    public byte[] askBlock(String message, Duration deadline) {
        throw LineException.closed(PORT, message);
    }

    @Override
    public boolean cutIn(byte[] bytes) {
        return false;
    }

    @Override
    public void close() {
        // nothing is open
    }
}
