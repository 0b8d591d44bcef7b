package railwitness.drivers.line;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/**
 * A line that can be opened anew when its port went and came back, without a new instrument behind it: whoever talks
 * keeps the same line. Between losing the port and having it again it behaves like one that is gone. What was learnt of the
 * instrument is learnt again behind the new port, before the first question but that for its identity.
 */
public final class LastingLine implements Line {
    private final LineOpener opener;
    /** One that is just starting may miss its first question. */
    private static final int TRIES = 3;

    private final Supplier<List<String>> ports;
    private final Map<String, Integer> asked = new HashMap<>();
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
        others().forEach(other -> asked.put(other, TRIES));
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

    /**
     * Ports that came up since this line was opened: what was there all along is somebody else's and is left alone, and who
     * was asked and is another is not asked again before its port has gone. Only where the own port is a serial device: a
     * socket's address stays what it is.
     */
    @Override
    public List<String> elsewhere() {
        List<String> others = others();
        asked.keySet().retainAll(others);
        List<String> candidates = others.stream()
                .filter(other -> asked.getOrDefault(other, 0) < TRIES)
                .toList();
        candidates.forEach(other -> asked.merge(other, 1, Integer::sum));
        return candidates;
    }

    private List<String> others() {
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

    /**
     * Another instrument answered there: its port is let go, and the own one is looked for again. Where that was the own
     * port, names have been exchanged, and the instrument may stand behind any other.
     */
    @Override
    public void backTo(String ownPort) {
        line.close();
        if (ownPort.equals(settings.port())) {
            asked.clear();
        }
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
