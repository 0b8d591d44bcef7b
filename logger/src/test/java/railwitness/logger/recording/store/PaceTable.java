package railwitness.logger.recording.store;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import railwitness.drivers.reading.Reading;

/**
 * Records at the real pace, eight channels 50 times a second each, and prints what it costs. Arguments: how many seconds
 * (300), a folder.
 */
final class PaceTable {
    private PaceTable() {}

    public static void main(String[] arguments) throws Exception {
        int seconds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 300;
        Path folder = arguments.length > 1 ? Path.of(arguments[1]) : Files.createTempDirectory("pace");
        Path file = folder.resolve("pace.session");
        List<Long> commits = new ArrayList<>();
        BenchNoise noise = new BenchNoise(1);
        SessionWriter writer = SessionWriter.create(file, Heads.plain());
        long cpu = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        long start = System.nanoTime();
        for (int s = 0; s < seconds; s++) {
            for (int i = 0; i < 50 * 8; i++) {
                Reading reading = noise.next();
                long wait = start + reading.repliedNanos() - System.nanoTime();
                if (i % 8 == 0 && wait > 0) {
                    TimeUnit.NANOSECONDS.sleep(wait);
                }
                writer.reading(reading);
            }
            long before = System.nanoTime();
            writer.commit();
            commits.add(System.nanoTime() - before);
        }
        double busy = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpu) / 1e9;
        writer.finish(SessionState.COMPLETE);
        Collections.sort(commits);
        System.out.println("seconds   share of a core   commit p50 ms   p99 ms   max ms   bytes/reading");
        System.out.printf(
                Locale.ROOT,
                "%7d %16.2f%% %15.2f %8.2f %8.2f %15.2f%n",
                seconds,
                100 * busy / seconds,
                commits.get(commits.size() / 2) / 1e6,
                commits.get(commits.size() * 99 / 100) / 1e6,
                commits.get(commits.size() - 1) / 1e6,
                (double) Files.size(file) / (seconds * 400.0));
        Files.delete(file);
    }
}
