package railwitness.drivers.line;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import railwitness.drivers.line.LineException.Trouble;

/**
 * The only file that knows the serial library. What its measured traps ask for is done here: one lock over listing and
 * opening, flow control off, bulk reads with a short time-out (the library rounds time-outs to 100 ms, so deadlines are
 * kept elsewhere), no listener (the one for disconnection fires without end), and a native library that is unpacked
 * where nobody else can write.
 */
final class SerialWire implements Wire {
    private static final String LIBRARY_PATH = "jSerialComm.library.path";
    private static final ReentrantLock LIBRARY = new ReentrantLock();
    private static final int READ_MILLIS = 100;
    private static final int NO_SUCH = 2;
    private static final int NOT_ALLOWED = 13;
    private static final int NOT_ALLOWED_ON_WINDOWS = 5;

    private final SerialPort port;
    private final Path path;

    private SerialWire(SerialPort port, Path path) {
        this.port = port;
        this.path = path;
    }

    /** @param shared true to open a port that another process holds */
    static SerialWire open(PortSettings settings, boolean shared) {
        LIBRARY.lock();
        try {
            loadPrivately();
            return windows() ? openByName(settings, shared) : openByPath(settings, shared);
        } catch (SerialPortInvalidPortException e) {
            throw noSuchPort(settings.port());
        } finally {
            LIBRARY.unlock();
        }
    }

    static boolean windows() {
        return System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows");
    }

    /* The library takes a path it cannot find for the last part of it, and so may open another device. */
    private static SerialWire openByPath(PortSettings settings, boolean shared) {
        try {
            Path real = Path.of(SerialPorts.device(settings.port())).toRealPath();
            if (Files.isRegularFile(real) || Files.isDirectory(real)) {
                throw noSuchPort(settings.port());
            }
            return opened(SerialPort.getCommPort(real.toString()), real, settings, shared);
        } catch (IOException e) {
            throw noSuchPort(settings.port());
        }
    }

    private static SerialWire openByName(PortSettings settings, boolean shared) {
        for (SerialPort found : SerialPort.getCommPorts()) {
            if (found.getSystemPortName().equalsIgnoreCase(settings.port())) {
                return opened(found, Path.of(found.getSystemPortName()), settings, shared);
            }
        }
        throw noSuchPort(settings.port());
    }

    private static SerialWire opened(SerialPort port, Path path, PortSettings settings, boolean shared) {
        if (shared) {
            port.disableExclusiveLock();
        }
        port.setComPortParameters(
                settings.baud(),
                settings.dataBits(),
                settings.stopBits() == 1 ? SerialPort.ONE_STOP_BIT : SerialPort.TWO_STOP_BITS,
                parity(settings));
        port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MILLIS, 0);
        if (!port.openPort(0)) {
            throw notOpened(settings.port(), path, port.getLastErrorCode());
        }
        return new SerialWire(port, path);
    }

    private static int parity(PortSettings settings) {
        return switch (settings.parity()) {
            case NONE -> SerialPort.NO_PARITY;
            case EVEN -> SerialPort.EVEN_PARITY;
            case ODD -> SerialPort.ODD_PARITY;
        };
    }

    /* A port that this process itself has open already is also reported as not found. */
    private static LineException notOpened(String port, Path path, int code) {
        if (code == NO_SUCH && (windows() || !Files.exists(path))) {
            return noSuchPort(port);
        }
        if (code == NOT_ALLOWED) {
            String help = ": you may not open this port; on Linux, join the group that owns it (often dialout)";
            return new LineException(Trouble.IN_USE, port + help, "", "");
        }
        String why = code == NOT_ALLOWED_ON_WINDOWS || !windows() ? "in use" : "not to be opened (error " + code + ")";
        return new LineException(
                Trouble.IN_USE,
                port + ": the port is " + why + "; close the other program that holds it, then start again",
                "",
                "");
    }

    private static LineException noSuchPort(String port) {
        List<String> known = list().stream().map(SerialPorts.Port::device).toList();
        String there = known.isEmpty() ? "no serial port is there" : "ports there: " + String.join(", ", known);
        return new LineException(
                Trouble.NO_SUCH_PORT, port + ": no such port; is its cable in? (" + there + ")", "", "");
    }

    static List<SerialPorts.Port> list() {
        LIBRARY.lock();
        try {
            loadPrivately();
            List<SerialPorts.Port> ports = new ArrayList<>();
            for (SerialPort port : SerialPort.getCommPorts()) {
                String device = windows() ? port.getSystemPortName() : port.getSystemPortPath();
                ports.add(new SerialPorts.Port(device, port.getPortDescription()));
            }
            return ports;
        } finally {
            LIBRARY.unlock();
        }
    }

    /** Runs this when the virtual machine ends, before the library closes the ports. */
    static void beforeClosing(Thread last) {
        LIBRARY.lock();
        try {
            loadPrivately();
            SerialPort.addShutdownHook(last);
        } finally {
            LIBRARY.unlock();
        }
    }

    /*
     * The library unpacks its native part, writable for all, below the folder for temporary files. Unless it was told
     * where to find it, it is shown a folder that only this user may enter, once, when it is first used.
     */
    private static final class Library {
        static final String TROUBLE = load();

        private static String load() {
            if (System.getProperty(LIBRARY_PATH) != null) {
                EndSignals.kept(SerialPort::autoCleanupAtShutdown);
                return "";
            }
            String before = System.getProperty("java.io.tmpdir");
            try {
                Path own = Files.createTempDirectory("railwitness-serial");
                own.toFile().deleteOnExit();
                System.setProperty("java.io.tmpdir", own.toString());
                EndSignals.kept(SerialPort::autoCleanupAtShutdown);
                return "";
            } catch (IOException e) {
                return "the folder for temporary files (" + before + ") cannot be written; name another by"
                        + " -Djava.io.tmpdir, or unpack the serial library and name its folder by -D" + LIBRARY_PATH;
            } finally {
                System.setProperty("java.io.tmpdir", before);
            }
        }
    }

    private static void loadPrivately() {
        if (!Library.TROUBLE.isEmpty()) {
            throw new LineException(Trouble.NO_SUCH_PORT, Library.TROUBLE, "", "");
        }
    }

    @Override
    public int read(byte[] bytes) {
        return port.readBytes(bytes, bytes.length);
    }

    @Override
    public boolean write(byte[] bytes) {
        for (int done = 0; done < bytes.length; ) {
            int count = port.writeBytes(bytes, bytes.length - done, done);
            if (count <= 0) {
                return false;
            }
            done += count;
        }
        return true;
    }

    @Override
    public boolean present() {
        return windows() || Files.exists(path);
    }

    @Override
    public void awaitSent(long millis) throws InterruptedException {
        long giveUp = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(millis);
        while (port.bytesAwaitingWrite() > 0 && System.nanoTime() < giveUp) {
            TimeUnit.MILLISECONDS.sleep(2);
        }
    }

    @Override
    public void close() {
        LIBRARY.lock();
        try {
            port.closePort();
        } finally {
            LIBRARY.unlock();
        }
    }
}
