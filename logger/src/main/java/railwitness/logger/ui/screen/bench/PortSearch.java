package railwitness.logger.ui.screen.bench;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import javax.swing.SwingUtilities;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.PortScan;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.line.SerialPorts;
import railwitness.logger.ui.screen.stage.WindowModel;

/** Asks the computer's ports, and those of the bench sheet that have another name, who is there. */
final class PortSearch {
    private static final Duration PATIENCE = Duration.ofMillis(500);

    private final WindowModel desk;
    private final PortsPanel panel;
    private Optional<PortScan> going = Optional.empty();

    /** @param panel shows each answer as it comes */
    PortSearch(WindowModel desk, PortsPanel panel) {
        this.desk = desk;
        this.panel = panel;
    }

    boolean on() {
        return going.isPresent();
    }

    /**
     * Begins, on the event thread.
     *
     * @param after the ports may be opened from then on
     * @param over told when the last port has answered or been given up
     */
    void begin(BenchSheet bench, CompletableFuture<Void> after, Runnable over) {
        PortScan scan = new PortScan(SerialLine::open, PATIENCE);
        CompletableFuture<Void> free = new CompletableFuture<>();
        going = Optional.of(scan);
        desk.ports().take(scan::end, free);
        desk.work(
                () -> {
                    try {
                        after.join();
                        List<String> ports = ports(bench);
                        SwingUtilities.invokeLater(() -> panel.asking(ports));
                        return scan.scan(ports, one -> SwingUtilities.invokeLater(() -> panel.answered(one)));
                    } finally {
                        free.complete(null);
                    }
                },
                all -> ended(over),
                why -> {
                    ended(over);
                    desk.message(why);
                });
    }

    private void ended(Runnable over) {
        going = Optional.empty();
        over.run();
    }

    /** No further question is asked. */
    void end() {
        going.ifPresent(PortScan::end);
    }

    private static List<String> ports(BenchSheet bench) {
        List<String> ports = new ArrayList<>();
        Set<String> known = new TreeSet<>();
        bench.instruments().forEach(instrument -> device(instrument.port().port())
                .filter(known::add)
                .ifPresent(device -> ports.add(instrument.port().port())));
        SerialPorts.list().forEach(port -> {
            if (known.add(device(port.device()).orElse(port.device()))) {
                ports.add(port.device());
            }
        });
        return ports;
    }

    /** The device behind a name such as one under {@code /dev/serial/by-id}; empty where there is no such file. */
    private static Optional<String> device(String name) {
        try {
            return Optional.of(Path.of(name).toRealPath().toString());
        } catch (IOException | InvalidPathException none) {
            return Optional.empty();
        }
    }
}
