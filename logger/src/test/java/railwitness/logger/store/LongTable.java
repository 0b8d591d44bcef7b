package railwitness.logger.store;

import java.io.BufferedWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;

/**
 * Prints how long a session takes to open, draw, read and verify, and how that grows with its length: each line a session
 * ten times as long. The picture is all eight channels at 1200 columns. Arguments: readings of the shortest (2000000), how
 * many lines (2), a folder.
 */
final class LongTable {
    private static final int COLUMNS = 1200;

    private final Path folder;

    private LongTable(Path folder) {
        this.folder = folder;
    }

    public static void main(String[] arguments) throws Exception {
        long count = arguments.length > 0 ? Long.parseLong(arguments[0]) : 2_000_000;
        int lines = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 2;
        Path folder = arguments.length > 2 ? Path.of(arguments[2]) : Files.createTempDirectory("long");
        System.out.println(
                "                    first       zooms, one channel       zooms, all 8    60 points   verify    export");
        System.out.println(
                "  readings  open ms picture ms  median ms    worst ms  median ms  worst ms    ms    Mreadings/s  Mreadings/s");
        for (int line = 0; line < lines; line++) {
            new LongTable(folder).line(count);
            count *= 10;
        }
    }

    private void line(long count) throws Exception {
        Path file = folder.resolve(count + ".session");
        if (!Files.exists(file)) {
            record(file, count);
        }
        long start = System.nanoTime();
        try (SessionFile session = SessionFile.open(file)) {
            double open = millis(start);
            session.channels().forEach(channel -> session.envelope(channel, TimeSpan.ALL, COLUMNS));
            double picture = millis(start);
            double[][] zooms = zooms(session);
            double points = points(session);
            double export = count / 1e3 / export(session);
            long before = System.nanoTime();
            Verification verification = Verification.of(file);
            if (!verification.isIntact() || verification.readings() != count) {
                throw new IllegalStateException(verification.words());
            }
            double verify = count / 1e3 / millis(before);
            System.out.printf(
                    Locale.ROOT,
                    "%10d %8.0f %10.0f %10.1f %11.1f %10.1f %9.1f %5.0f %14.2f %12.2f%n",
                    count,
                    open,
                    picture,
                    zooms[0][zooms[0].length / 2],
                    zooms[0][zooms[0].length - 1],
                    zooms[1][zooms[1].length / 2],
                    zooms[1][zooms[1].length - 1],
                    points,
                    verify,
                    export);
        }
    }

    private static void record(Path file, long count) {
        BenchNoise noise = new BenchNoise(1);
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            for (long i = 0; i < count; i++) {
                writer.reading(noise.next());
            }
            writer.finish(SessionState.COMPLETE);
        }
    }

    private static double millis(long start) {
        return (System.nanoTime() - start) / 1e6;
    }

    /** Times of a hundred zooms of any width anywhere, sorted: of one channel, and of all. */
    private static double[][] zooms(SessionFile session) {
        Random random = new Random(1);
        double[][] times = new double[2][100];
        for (int i = 0; i < 100; i++) {
            double length = session.lastNanos() * Math.pow(10, -4 * random.nextDouble());
            long from = (long) ((session.lastNanos() - length) * random.nextDouble());
            TimeSpan span = new TimeSpan(from, from + (long) length);
            long start = System.nanoTime();
            session.envelope(session.channels().get(i % 8), span, COLUMNS);
            times[0][i] = millis(start);
            start = System.nanoTime();
            for (Channel channel : session.channels()) {
                session.envelope(channel, span, COLUMNS);
            }
            times[1][i] = millis(start);
        }
        java.util.Arrays.sort(times[0]);
        java.util.Arrays.sort(times[1]);
        return times;
    }

    /** The readings of sixty operating points of five seconds, all channels. */
    private static double points(SessionFile session) {
        long start = System.nanoTime();
        for (int i = 0; i < 60; i++) {
            long from = session.lastNanos() / 61 * i;
            session.traces(new TimeSpan(from, from + 5_000_000_000L));
        }
        return millis(start);
    }

    private double export(SessionFile session) throws Exception {
        Path out = folder.resolve("export.csv");
        long start = System.nanoTime();
        try (BufferedWriter writer = Files.newBufferedWriter(out)) {
            for (Channel channel : session.channels()) {
                session.readings(channel, TimeSpan.ALL, reading -> {
                    try {
                        writer.write(channel + "," + reading.requestedNanos() + "," + reading.repliedNanos() + ","
                                + (reading instanceof Measured m ? m.value() : "") + "\n");
                    } catch (java.io.IOException e) {
                        throw new java.io.UncheckedIOException(e);
                    }
                });
            }
        }
        double millis = millis(start);
        Files.delete(out);
        return millis;
    }
}
