package railwitness.logger.ui.screen.window;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import javax.swing.SwingUtilities;
import railwitness.logger.recording.sheet.SheetEdit;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.theme.Theme;

/**
 * How long the event thread keeps a key waiting during a rehearsal of the demo with every instrument read fifty times a
 * second, and what the whole program costs: {@code StallTable [SECONDS [PACE]]}; at pace 2 that is about 600 readings a second. A small request is sent to the event thread
 * every 5 ms and timed; the longest waits are printed with when they were.
 */
public final class StallTable {
    private static final int EVERY_MILLIS = 5;
    private static final String INSTRUMENT = "[[instrument]]";
    private static final double LONG_MILLIS = 30;

    private StallTable() {}

    public static void main(String[] arguments) throws Exception {
        double seconds = arguments.length > 0 ? Double.parseDouble(arguments[0]) : 60;
        double pace = arguments.length > 1 ? Double.parseDouble(arguments[1]) : 2;
        Path folder = Files.createTempDirectory("stalls");
        Window window = Screenshots.onScreen(
                () -> Opening.of(folder, Theme.LIGHT, "unreleased").open());
        Screenshots.onScreen(() -> {
            window.desk().sheets(busy(window.desk().sheets()));
            window.desk().rehearsal(window.desk().rehearsal().withPace(pace));
            window.enter("cautions");
            window.line().acts().get(0).done().run();
            return null;
        });
        while (!Screenshots.onScreen(() -> window.desk().running())) {
            Thread.sleep(EVERY_MILLIS);
        }
        long screen = Screenshots.onScreen(() -> Thread.currentThread().getId());
        long drawing = threadNanos(screen);
        long cpu = cpuNanos();
        long began = System.nanoTime();
        List<Double> waits = new ArrayList<>();
        List<String> longest = new ArrayList<>();
        while ((System.nanoTime() - began) / 1e9 < seconds) {
            double at = (System.nanoTime() - began) / 1e9;
            double wait = wait1();
            waits.add(wait);
            if (wait > LONG_MILLIS) {
                longest.add(String.format(Locale.ROOT, "%.1f s: %.0f ms", at, wait));
            }
            Thread.sleep(EVERY_MILLIS);
        }
        double wall = System.nanoTime() - began;
        double share = (cpuNanos() - cpu) / wall;
        double drawn = (threadNanos(screen) - drawing) / wall;
        Collections.sort(waits);
        System.out.printf(
                Locale.ROOT,
                "%d errands, median %.1f ms, p99 %.1f ms, longest %.1f ms; the event thread %.1f %% of a core,"
                        + " the whole program with its virtual bench %.0f %%%n",
                waits.size(),
                waits.get(waits.size() / 2),
                waits.get(waits.size() * 99 / 100),
                waits.get(waits.size() - 1),
                100 * drawn,
                100 * share);
        System.out.println((longest.isEmpty() ? "none" : longest.size() + " waits") + " over " + (int) LONG_MILLIS
                + " ms " + String.join(", ", longest));
        System.exit(0);
    }

    private static Sheets busy(Sheets sheets) {
        SheetEdit text = new SheetEdit(sheets.bench().text()).set("[bench]", 0, "interval_s", "0.02");
        for (int i = 0; i < text.count(INSTRUMENT); i++) {
            text.set(INSTRUMENT, i, "baud", "921600");
            if (!text.literal(INSTRUMENT, i, "plc").isEmpty()) {
                text.set(INSTRUMENT, i, "plc", "0.1");
            }
        }
        return new Sheets(sheets.design(), Sheets.bench("bench.toml", text.text()), sheets.plan());
    }

    private static double wait1() throws InterruptedException {
        CountDownLatch done = new CountDownLatch(1);
        long sent = System.nanoTime();
        SwingUtilities.invokeLater(done::countDown);
        done.await();
        return (System.nanoTime() - sent) / 1e6;
    }

    private static long threadNanos(long thread) {
        return ManagementFactory.getThreadMXBean().getThreadCpuTime(thread);
    }

    private static long cpuNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }
}
