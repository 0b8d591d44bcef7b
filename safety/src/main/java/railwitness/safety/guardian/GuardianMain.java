package railwitness.safety.guardian;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import railwitness.drivers.line.SocketAddress;

/**
 * Where the guardian starts. It reads its {@link GuardianTask}, opens the ports, says {@code ready}, and waits for beats. When
 * its input ends or a beat is missed, or it is asked to end without having been disarmed, it switches off and lets go
 * of its ports. It writes no file.
 */
public final class GuardianMain {
    private static final int NOT_OPENED = 2;
    private static final int FIRED = 3;
    private static final int FIRED_IN_VAIN = 4;

    private GuardianMain() {}

    public static void main(String[] arguments) throws IOException {
        InputStream in = new FileInputStream(FileDescriptor.in);
        OutputStream out = new FileOutputStream(FileDescriptor.out);
        GuardianTask orders = GuardianTask.read(in);
        Map<String, BytePort> ways = new HashMap<>();
        String failed = open(orders, ways);
        if (!failed.isEmpty()) {
            say(out, failed);
            Runtime.getRuntime().halt(NOT_OPENED);
        }
        rehearse();
        Thread whenKilled = new Thread(() -> fireAndEnd(orders, ways), "ended from outside");
        Runtime.getRuntime().addShutdownHook(whenKilled);
        HeartbeatMonitor vigil = new HeartbeatMonitor(orders.patience(), out);
        say(out, "ready");
        if (vigil.keep(in) == HeartbeatMonitor.End.DISARMED) {
            ways.values().forEach(BytePort::close);
            Runtime.getRuntime().halt(0);
        }
        fireAndEnd(orders, ways);
    }

    private static String open(GuardianTask orders, Map<String, BytePort> ways) {
        try {
            for (GuardianTask.Supply supply : orders.supplies()) {
                open(supply.port(), ways);
            }
            for (GuardianTask.Load load : orders.loads()) {
                open(load.port(), ways);
            }
            return "";
        } catch (CannotOpen e) {
            return e.getMessage();
        }
    }

    private static final class CannotOpen extends Exception {
        CannotOpen(String port, IOException why) {
            super("the guardian cannot open " + port + ": " + why.getMessage());
        }
    }

    private static void open(String port, Map<String, BytePort> ways) throws CannotOpen {
        try {
            if (!ways.containsKey(port)) {
                ways.put(port, SocketAddress.is(port) ? new SocketPort(SocketAddress.of(port)) : new DevicePort(port));
            }
        } catch (IOException e) {
            throw new CannotOpen(port, e);
        }
    }

    /** Fires once at nothing, so that every class is loaded while the disk still answers. */
    private static void rehearse() {
        byte[] none = {};
        GuardianTask.Supply supply = new GuardianTask.Supply("none", none, none);
        BytePort way = new BytePort() {
            @Override
            public void write(byte[] bytes) {
                // nowhere
            }

            @Override
            public byte[] read() {
                return "0\n".getBytes(StandardCharsets.US_ASCII);
            }

            @Override
            public void close() {
                // nothing is open
            }
        };
        GuardianTask orders =
                new GuardianTask(Duration.ofSeconds(1), List.of(supply), List.of(new GuardianTask.Load("none", none)));
        new EmergencyOff(orders, Map.of("none", way), false).fire();
    }

    /** Fires once, whoever comes first, and ends in any case: a port that blocks must not keep the others. */
    private static synchronized void fireAndEnd(GuardianTask orders, Map<String, BytePort> ways) {
        Thread limit = new Thread(GuardianMain::endInTime, "end in time");
        limit.setDaemon(true);
        limit.start();
        boolean off = new EmergencyOff(orders, ways, true).fire();
        ways.values().forEach(BytePort::close);
        Runtime.getRuntime().halt(off ? FIRED : FIRED_IN_VAIN);
    }

    private static void endInTime() {
        try {
            TimeUnit.MILLISECONDS.sleep(EmergencyOff.LONGEST_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        Runtime.getRuntime().halt(FIRED_IN_VAIN);
    }

    private static void say(OutputStream out, String words) throws IOException {
        out.write((words + "\n").getBytes(StandardCharsets.UTF_8));
        out.flush();
    }
}
