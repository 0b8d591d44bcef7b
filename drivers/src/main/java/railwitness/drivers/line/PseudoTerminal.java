package railwitness.drivers.line;

import com.sun.jna.LastErrorException;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;
import java.time.Duration;
import java.util.Arrays;

/**
 * A pair of terminals joined by the system: programs open {@link #device} like a serial port, and this end reads and
 * writes what a real instrument would. Linux and macOS only. The device's own descriptor is kept open, so that clients
 * may come and go.
 */
public final class PseudoTerminal implements AutoCloseable {
    private static final int NOT_CONTROLLING = Platform.isMac() ? 0x20000 : 0x100;
    private static final int SLICE_MILLIS = 50;

    private final Terminals terminals;
    private final int master;
    private final int slave;
    private final String device;
    private volatile boolean closed;

    /** @throws UnsupportedOperationException where the system has no pseudo-terminals, saying what to do instead */
    public PseudoTerminal() {
        if (!available()) {
            throw new UnsupportedOperationException("this system has no pseudo-terminals (Linux and macOS have);"
                    + " use the virtual bench inside the program instead: rehearse --pace real");
        }
        terminals = Native.load("c", Terminals.class);
        master = terminals.posix_openpt(Terminals.READ_WRITE | NOT_CONTROLLING);
        terminals.grantpt(master);
        terminals.unlockpt(master);
        device = terminals.ptsname(master);
        slave = terminals.open(device, Terminals.READ_WRITE | NOT_CONTROLLING);
        Memory termios = new Memory(256);
        terminals.tcgetattr(slave, termios);
        terminals.cfmakeraw(termios);
        terminals.tcsetattr(slave, 0, termios);
    }

    /** True where pseudo-terminals can be made. */
    public static boolean available() {
        return Platform.isLinux() || Platform.isMac();
    }

    /** Path to open in the place of a serial port. */
    public String device() {
        return device;
    }

    /** Bytes that came from the client, waiting at most so long; empty when none came. */
    public byte[] read(Duration longest) {
        long giveUp = System.nanoTime() + longest.toNanos();
        while (true) {
            byte[] bytes = readSlice(millisUntil(giveUp));
            if (bytes.length > 0 || System.nanoTime() >= giveUp) {
                return bytes;
            }
        }
    }

    private static int millisUntil(long nanos) {
        return (int) Math.max(0, Math.min(SLICE_MILLIS, (nanos - System.nanoTime() + 999_999) / 1_000_000));
    }

    /* Short waits under the lock: the master is never closed under a reader, and close never waits long. */
    private synchronized byte[] readSlice(int millis) {
        checkOpen();
        try (Memory ask = new Memory(8)) {
            ask.setInt(0, master);
            ask.setShort(4, (short) Terminals.READABLE);
            ask.setShort(6, (short) 0);
            if (terminals.poll(ask, new NativeLong(1), millis) <= 0) {
                return new byte[0];
            }
            byte[] bytes = new byte[4096];
            int count =
                    terminals.read(master, bytes, new NativeLong(bytes.length)).intValue();
            return Arrays.copyOf(bytes, Math.max(0, count));
        } catch (LastErrorException interrupted) {
            return new byte[0];
        }
    }

    /** Sends bytes to the client. */
    public void write(byte[] bytes) {
        for (int done = 0; done < bytes.length; ) {
            byte[] rest = Arrays.copyOfRange(bytes, done, bytes.length);
            done += writeSome(rest);
        }
    }

    private int writeSome(byte[] bytes) {
        checkOpen();
        return terminals.write(master, bytes, new NativeLong(bytes.length)).intValue();
    }

    private void checkOpen() {
        if (closed) {
            throw new IllegalStateException("the pseudo-terminal " + device + " is closed");
        }
    }

    /** Takes the device away: for a client it is as if the plug were pulled. */
    @Override
    public synchronized void close() {
        if (!closed) {
            closed = true;
            terminals.close(slave);
            terminals.close(master);
        }
    }
}
