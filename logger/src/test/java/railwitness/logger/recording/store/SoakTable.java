package railwitness.logger.recording.store;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Records days in virtual time and prints how the heap and the file grow. Run it with {@code -Xmx64m}. Arguments: how
 * many hours (72), a folder.
 */
final class SoakTable {
    private static final int LINES = 6;

    private SoakTable() {}

    public static void main(String[] arguments) throws Exception {
        int hours = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 72;
        Path folder = arguments.length > 1 ? Path.of(arguments[1]) : Files.createTempDirectory("soak");
        Path file = folder.resolve("soak.session");
        long count = hours * 3600L * 400;
        BenchNoise noise = new BenchNoise(1);
        long start = System.nanoTime();
        System.out.println("  hours     readings   heap used MB   file MB   readings/s");
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            for (long i = 1; i <= count; i++) {
                writer.reading(noise.next());
                if (i % (count / LINES) == 0) {
                    print(hours * (double) i / count, i, file, start);
                }
            }
            writer.finish(SessionState.COMPLETE);
        }
        System.out.println(file + ": " + Files.size(file) + " bytes");
    }

    private static void print(double hours, long readings, Path file, long start) throws Exception {
        System.gc();
        long heap = ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
        System.out.printf(
                Locale.ROOT,
                "%7.1f %12d %14.1f %9.1f %12.0f%n",
                hours,
                readings,
                heap / 1e6,
                Files.size(file) / 1e6,
                readings / ((System.nanoTime() - start) / 1e9));
    }
}
