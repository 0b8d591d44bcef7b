package railwitness.logger.screen.window;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import javax.swing.SwingUtilities;
import railwitness.logger.screen.theme.Theme;

/**
 * How long the event thread keeps a key waiting during a rehearsal of the demo, and what the whole program costs:
 * {@code StallTable [PACE [SECONDS]]}. A small errand is sent to the event thread every 5 ms and timed.
 */
public final class StallTable {
    private static final int EVERY_MILLIS = 5;

    private StallTable() {}

    public static void main(String[] arguments) throws Exception {
        double pace = arguments.length > 0 ? Double.parseDouble(arguments[0]) : 1;
        double seconds = arguments.length > 1 ? Double.parseDouble(arguments[1]) : 60;
        Path folder = Files.createTempDirectory("stalls");
        Window window = Screenshots.onScreen(
                () -> Opening.of(folder, Theme.LIGHT, "unreleased").open());
        Screenshots.onScreen(() -> {
            window.desk().rehearsal(window.desk().rehearsal().withPace(pace));
            window.enter("cautions");
            window.line().acts().get(0).done().run();
            return null;
        });
        Thread.sleep(5000);
        long cpu = cpuNanos();
        long began = System.nanoTime();
        List<Double> waits = new ArrayList<>();
        while ((System.nanoTime() - began) / 1e9 < seconds) {
            waits.add(wait1());
            Thread.sleep(EVERY_MILLIS);
        }
        double share = (cpuNanos() - cpu) / (double) (System.nanoTime() - began);
        Collections.sort(waits);
        System.out.printf(
                Locale.ROOT,
                "%d errands, median %.1f ms, p99 %.1f ms, longest %.1f ms; %.0f %% of a core%n",
                waits.size(),
                waits.get(waits.size() / 2),
                waits.get(waits.size() * 99 / 100),
                waits.get(waits.size() - 1),
                100 * share);
        System.exit(0);
    }

    private static double wait1() throws InterruptedException {
        CountDownLatch done = new CountDownLatch(1);
        long sent = System.nanoTime();
        SwingUtilities.invokeLater(done::countDown);
        done.await();
        return (System.nanoTime() - sent) / 1e6;
    }

    private static long cpuNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }
}
