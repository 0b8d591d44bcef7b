package railwitness.logger.ui.command;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import railwitness.drivers.line.PseudoTerminal;

/**
 * A terminal window as the system knows it: a pseudo-terminal that a program has as its controlling terminal, in a session
 * of its own ({@code setsid --ctty} of util-linux). What the program prints is read, as a window does. Closing it hangs up.
 */
final class ControllingTerminal implements AutoCloseable {
    private final PseudoTerminal terminal;
    private final ByteArrayOutputStream printed = new ByteArrayOutputStream();
    private final Thread window = new Thread(this::show, "terminal window");
    private volatile boolean closed;

    ControllingTerminal() {
        boolean possible = new File("/usr/bin/setsid").canExecute() && PseudoTerminal.available();
        if (!possible) {
            System.out.println("skipped: this system has no setsid or no pseudo-terminals");
        }
        Assumptions.assumeTrue(possible, "this system has no setsid or no pseudo-terminals");
        terminal = new PseudoTerminal();
        window.setDaemon(true);
        window.start();
    }

    Process started(List<String> command) throws IOException {
        File device = new File(terminal.device());
        List<String> all = new ArrayList<>(List.of("/usr/bin/setsid", "--ctty"));
        all.addAll(command);
        return new ProcessBuilder(all)
                .redirectInput(device)
                .redirectOutput(device)
                .redirectError(device)
                .start();
    }

    private void show() {
        try {
            while (!closed) {
                byte[] some = terminal.read(Duration.ofMillis(100));
                synchronized (printed) {
                    printed.writeBytes(some);
                }
            }
        } catch (IllegalStateException over) {
            closed = true;
        }
    }

    /** What stands on it. */
    String shown() {
        synchronized (printed) {
            return printed.toString(StandardCharsets.UTF_8);
        }
    }

    /** The window is closed. */
    void hangUp() {
        closed = true;
        terminal.close();
    }

    @Override
    public void close() {
        hangUp();
    }
}
