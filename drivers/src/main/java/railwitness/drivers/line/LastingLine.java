package railwitness.drivers.line;

import java.time.Duration;
import java.util.List;

/**
 * A line that can be opened anew when its port went and came back, without a new instrument behind it: whoever talks
 * keeps the same line. Between losing the port and having it again it behaves like one that is gone. What was learnt of the
 * instrument is learnt again behind the new port, before the first question but that for its identity.
 */
public final class LastingLine implements Line {
    private final LineOpener opener;
    private final PortSettings settings;
    private volatile Line line;
    private volatile boolean closed;
    private String identity = "";
    private Duration learning = Duration.ZERO;
    private boolean unknown;

    /** @throws LineException as the opener does */
    public LastingLine(LineOpener opener, PortSettings settings) {
        this.opener = opener;
        this.settings = settings;
        this.line = opener.open(settings);
    }

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
        if (unknown && !message.equals(InStep.IDENTITY)) {
            unknown = false;
            line.getToKnow(identity, learning.compareTo(deadline) < 0 ? learning : deadline);
        }
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
    public void getToKnow(String ownIdentity, Duration deadline) {
        identity = ownIdentity;
        learning = deadline;
        unknown = false;
        line.getToKnow(ownIdentity, deadline);
    }

    @Override
    public void doubt() {
        line.doubt();
    }

    @Override
    public List<String> thrownAway() {
        return line.thrownAway();
    }

    /** From the thread that asks and sends. A line that was closed stays closed. */
    @Override
    public void reopen() {
        line.close();
        synchronized (this) {
            if (closed) {
                throw LineException.closed(settings.port(), "");
            }
            line = opener.open(settings);
            unknown = !identity.isEmpty();
        }
    }

    @Override
    public synchronized void close() {
        closed = true;
        line.close();
    }
}
