package railwitness.logger.recording.store;

import java.io.BufferedWriter;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;

/**
 * Prints how many readings a second are kept (by the clock, and by the writing
 * thread's own time, which other work on the computer does not touch), with a commit each second, packing and chain, and what a reading takes;
 * beside it plain rows and the import of the {@code sqlite3} shell, same readings, same run. Arguments: how many
 * readings (20000000), a folder.
 */
final class RateTable {
    private static final long SECOND_NANOS = 1_000_000_000L;

    private final int count;
    private final Path folder;
    private double cpuSeconds;
    private final BenchNoise noise = new BenchNoise(1);

    private RateTable(int count, Path folder) {
        this.count = count;
        this.folder = folder;
    }

    public static void main(String[] arguments) throws Exception {
        int count = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 20_000_000;
        Path folder = arguments.length > 1 ? Path.of(arguments[1]) : Files.createTempDirectory("rate");
        System.out.printf(Locale.ROOT, "%d readings, 8 channels, both times%n", count);
        System.out.println("form                                    readings/s   of one core   bytes/reading");
        new RateTable(count, folder).run();
    }

    private void run() throws Exception {
        line("making the readings alone", time(this::make), 0);
        Path session = folder.resolve("rate.session");
        line("session: packed, chained, commit each s", time(() -> session(session)), Files.size(session));
        Path plain = folder.resolve("plain.db");
        line("plain rows, commit each s", time(() -> plain(plain)), Files.size(plain));
        Path csv = folder.resolve("rate.csv");
        csv(csv);
        Path imported = folder.resolve("imported.db");
        line("sqlite3 shell .import of the CSV", time(() -> shellImport(csv, imported)), Files.size(imported));
        line("the CSV itself", 0, Files.size(csv));
        for (Path path : new Path[] {session, plain, csv, imported}) {
            Files.delete(path);
        }
    }

    private interface Work {
        void run() throws Exception;
    }

    private double time(Work work) throws Exception {
        noise.rewind();
        long start = System.nanoTime();
        long cpuStart = cpuNanos();
        work.run();
        cpuSeconds = (cpuNanos() - cpuStart) / 1e9;
        return (System.nanoTime() - start) / 1e9;
    }

    private static long cpuNanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private void line(String form, double seconds, long bytes) {
        System.out.printf(
                Locale.ROOT,
                "%-40s%10s%14s%16s%n",
                form,
                seconds == 0 ? "-" : String.format(Locale.ROOT, "%.0f", count / seconds),
                seconds == 0 || form.startsWith("sqlite3")
                        ? "-"
                        : String.format(Locale.ROOT, "%.0f", count / cpuSeconds),
                bytes == 0 ? "-" : String.format(Locale.ROOT, "%.2f", (double) bytes / count));
    }

    private void make() {
        long sum = 0;
        for (int i = 0; i < count; i++) {
            sum += noise.next().repliedNanos();
        }
        if (sum == 0) {
            throw new IllegalStateException("the readings have no times");
        }
    }

    private void session(Path file) {
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            for (int i = 0; i < count; i++) {
                writer.reading(noise.next());
            }
            writer.finish(SessionState.COMPLETE);
        }
    }

    private void plain(Path file) throws SQLException {
        try (Connection connection = Sqlite.openForWriting(file);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = FULL");
            statement.execute("CREATE TABLE r (channel INTEGER, requested_ns INTEGER, replied_ns INTEGER, value REAL)");
            try (PreparedStatement insert = connection.prepareStatement("INSERT INTO r VALUES (?,?,?,?)")) {
                plainRows(statement, insert);
            }
            statement.execute("PRAGMA journal_mode = DELETE");
        }
    }

    private void plainRows(Statement statement, PreparedStatement insert) throws SQLException {
        statement.execute("BEGIN");
        long committed = System.nanoTime();
        for (int i = 0; i < count; i++) {
            Reading reading = noise.next();
            insert.setInt(1, i % 8);
            insert.setLong(2, reading.requestedNanos());
            insert.setLong(3, reading.repliedNanos());
            insert.setDouble(4, ((Measured) reading).value());
            insert.executeUpdate();
            if (System.nanoTime() - committed > SECOND_NANOS) {
                statement.execute("COMMIT");
                statement.execute("BEGIN");
                committed = System.nanoTime();
            }
        }
        statement.execute("COMMIT");
    }

    private void csv(Path file) throws IOException {
        noise.rewind();
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            for (int i = 0; i < count; i++) {
                Reading reading = noise.next();
                out.write(i % 8 + "," + reading.requestedNanos() + "," + reading.repliedNanos() + ","
                        + ((Measured) reading).value() + "\n");
            }
        }
    }

    private void shellImport(Path csv, Path file) throws IOException, InterruptedException {
        String create = "CREATE TABLE r (channel INTEGER, requested_ns INTEGER, replied_ns INTEGER, value REAL);";
        int code = new ProcessBuilder("sqlite3", file.toString(), create, ".mode csv", ".import " + csv + " r")
                .inheritIO()
                .start()
                .waitFor();
        if (code != 0) {
            throw new IllegalStateException("the sqlite3 shell ended with " + code);
        }
    }
}
