package railwitness.logger.recording.store;

import java.io.BufferedWriter;
import java.lang.management.ManagementFactory;
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
        System.out.println(
                "(each line twice: by the clock, then the thread's own time, which other work on the computer does"
                        + " not touch)");
        for (int line = 0; line < lines; line++) {
            new LongTable(folder).line(count);
            count *= 10;
        }
    }

    private void line(long count) throws Exception {
        Path file = folder.resolve(count + ".session");
        if (!Files.exists(file)) {
            LongSession.record(file, count);
        }
        double[][] columns = new double[8][];
        Stopwatch whole = new Stopwatch();
        try (SessionFile session = SessionFile.open(file)) {
            columns[0] = whole.millis();
            session.channels().forEach(channel -> session.envelope(channel, TimeSpan.ALL, COLUMNS));
            columns[1] = whole.millis();
            zooms(session, columns);
            Stopwatch points = new Stopwatch();
            points(session);
            columns[6] = points.millis();
            Stopwatch export = new Stopwatch();
            export(session);
            columns[7] = export.millis();
        }
        Stopwatch verify = new Stopwatch();
        Verification verification = Verification.of(file);
        if (!verification.isIntact() || verification.readings() != count) {
            throw new IllegalStateException(verification.words());
        }
        print(count, columns, verify.millis(), 0);
        print(count, columns, verify.millis(), 1);
    }

    private static void print(long count, double[][] c, double[] verify, int which) {
        System.out.printf(
                Locale.ROOT,
                "%10d %8.0f %10.0f %10.1f %11.1f %10.1f %9.1f %5.0f %14.2f %12.2f%n",
                count,
                c[0][which],
                c[1][which],
                c[2][which],
                c[3][which],
                c[4][which],
                c[5][which],
                c[6][which],
                count / 1e3 / verify[which],
                count / 1e3 / c[7][which]);
    }

    /** Milliseconds by the clock and of the thread's own time since it was made. */
    private static final class Stopwatch {
        private final long start = System.nanoTime();
        private final long own = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();

        double[] millis() {
            return new double[] {
                (System.nanoTime() - start) / 1e6,
                (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - own) / 1e6
            };
        }
    }

    /** A hundred zooms of any width anywhere: median and worst of one channel, and of all. */
    private static void zooms(SessionFile session, double[][] columns) {
        Random random = new Random(1);
        double[][][] times = new double[2][2][100];
        for (int i = 0; i < 100; i++) {
            double length = session.lastNanos() * Math.pow(10, -4 * random.nextDouble());
            long from = (long) ((session.lastNanos() - length) * random.nextDouble());
            TimeSpan span = new TimeSpan(from, from + (long) length);
            Stopwatch one = new Stopwatch();
            session.envelope(session.channels().get(i % 8), span, COLUMNS);
            keep(times[0], i, one);
            Stopwatch all = new Stopwatch();
            session.channels().forEach(channel -> session.envelope(channel, span, COLUMNS));
            keep(times[1], i, all);
        }
        for (int of = 0; of < 2; of++) {
            java.util.Arrays.sort(times[of][0]);
            java.util.Arrays.sort(times[of][1]);
            columns[2 + 2 * of] = new double[] {times[of][0][50], times[of][1][50]};
            columns[3 + 2 * of] = new double[] {times[of][0][99], times[of][1][99]};
        }
    }

    private static void keep(double[][] times, int i, Stopwatch watch) {
        double[] millis = watch.millis();
        times[0][i] = millis[0];
        times[1][i] = millis[1];
    }

    /** The readings of sixty operating points of five seconds, all channels. */
    private static void points(SessionFile session) {
        for (int i = 0; i < 60; i++) {
            long from = session.lastNanos() / 61 * i;
            session.traces(new TimeSpan(from, from + 5_000_000_000L));
        }
    }

    private void export(SessionFile session) throws Exception {
        Path out = folder.resolve("export.csv");
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
        Files.delete(out);
    }
}
