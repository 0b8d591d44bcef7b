package railwitness.drivers.line;

import java.util.List;

/** The serial ports of this computer. */
public final class SerialPorts {
    /**
     * One port.
     *
     * @param device as it is opened
     * @param description as the system calls it
     */
    public record Port(String device, String description) {}

    private SerialPorts() {}

    /**
     * The device that a bench sheet's port means, for whoever opens it: a name without a slash stands below {@code /dev}
     * ({@code ttyUSB0} is {@code /dev/ttyUSB0}); on Windows names stay as they are, and so does the address of a socket.
     */
    public static String device(String port) {
        return SerialWire.windows() || SocketAddress.is(port) || port.contains("/") ? port : "/dev/" + port;
    }

    /** All that the system knows, in its order; pseudo-terminals are not among them. */
    public static List<Port> list() {
        return SerialWire.list();
    }

    /**
     * Runs a last task when the program ends by a signal or an exit, before the serial library closes the ports.
     *
     * <p>Hooks of the virtual machine run side by side, and the library's own closes every port, throwing away what has
     * not been sent. It first runs, one after the other, the tasks given to it, and waits for each to end: output off
     * must be sent from here, not from a hook of the virtual machine. The task must end by itself.
     */
    public static void beforePortsClose(String name, Runnable last) {
        SerialWire.beforeClosing(new Thread(last, name));
    }
}
