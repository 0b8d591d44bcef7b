package railwitness.drivers.line;

import java.time.Duration;
import java.util.List;
import java.util.function.Supplier;

/**
 * A line that can be opened anew when its port went and came back, without a new instrument behind it: whoever talks
 * keeps the same line. Between losing the port and having it again it behaves like one that is gone. What was learnt of the
 * instrument is learnt again behind the new port, before the first question but that for its identity.
 */
public final class LastingLine implements Line {
    private final LineOpener opener;
    private final Supplier<List<String>> ports;
    private volatile PortSettings settings;
    private volatile Line line;
    private volatile boolean closed;
    private String identity = "";
    private Duration learning = Duration.ZERO;
    private boolean unknown;

    /** @throws LineException as the opener does */
    public LastingLine(LineOpener opener, PortSettings settings) {
        this(opener, settings, LastingLine::known);
    }

    /** @param ports all that the system has now, where the same instrument may come back under another name */
    LastingLine(LineOpener opener, PortSettings settings, Supplier<List<String>> ports) {
        this.ports = ports;
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

    private static List<String> known() {
        return SerialPorts.list().stream().map(SerialPorts.Port::device).toList();
    }

    /** Only where the own port is a serial device: a socket's address stays what it is. */
    @Override
    public List<String> elsewhere() {
        String own = settings.port();
        return own.contains("/") && !SocketAddress.is(own)
                ? ports.get().stream()
                        .filter(device -> !device.equals(SerialPorts.device(own)))
                        .toList()
                : List.of();
    }

    @Override
    public void reopenAt(String otherPort) {
        PortSettings before = settings;
        settings = new PortSettings(
                otherPort, before.baud(), before.dataBits(), before.parity(), before.stopBits(), before.terminator());
        try {
            reopen();
        } catch (LineException e) {
            settings = before;
            throw e;
        }
    }

    /** Another instrument answered there: its port is let go, and the own one is looked for again. */
    @Override
    public void backTo(String ownPort) {
        line.close();
        settings = new PortSettings(
                ownPort,
                settings.baud(),
                settings.dataBits(),
                settings.parity(),
                settings.stopBits(),
                settings.terminator());
    }

    @Override
    public synchronized void close() {
        closed = true;
        line.close();
    }
}
