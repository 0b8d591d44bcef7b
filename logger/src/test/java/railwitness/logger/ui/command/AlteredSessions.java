package railwitness.logger.ui.command;

import java.io.IOException;
import java.io.PrintStream;
import java.io.RandomAccessFile;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;

/**
 * Alters sessions as a forger or an accident would and hands each to the commands that read sessions. From the command
 * line: how many listed alterations go through every reading command (60), how many mutated files (2000), the seed (1);
 * prints how each kind ended. What is never right: a trace, a mistake in the program, more than ten seconds, a verdict or a
 * figure that the whole session does not have.
 */
public final class AlteredSessions implements AutoCloseable {
    private static final long MOST_CPU_NANOS = 10_000_000_000L;
    private static final long MOST_WALL_SECONDS = 90;

    /** Each is done to a copy of a whole session. */
    static final List<String> ALTERATIONS = List.of(
            "UPDATE session SET rehearsal = 0",
            "UPDATE session SET rehearsal = NULL",
            "UPDATE session SET id = 'another'",
            "UPDATE session SET started_wall = '2020-01-01T00:00:00Z'",
            "UPDATE session SET started_wall = 'yesterday'",
            "UPDATE session SET zone = 'Mars/Base'",
            "UPDATE session SET unit_serial = '9999'",
            "UPDATE session SET unit_name = NULL",
            "UPDATE session SET unit_condition = 'as left, sound'",
            "UPDATE session SET acknowledged_by = 'somebody else'",
            "UPDATE session SET program_version = '9.9'",
            "DELETE FROM session",
            "UPDATE sheet SET text = replace(text, 'nominal_V = 36', 'nominal_V = 37') WHERE kind = 'design'",
            "UPDATE sheet SET text = text || char(10) || '# looked at' WHERE kind = 'design'",
            "UPDATE sheet SET text = '' WHERE kind = 'design'",
            "UPDATE sheet SET text = NULL WHERE kind = 'bench'",
            "UPDATE sheet SET text = replace(text, '0.0', '0.00') WHERE kind = 'bench'",
            "UPDATE sheet SET digest = x'00' WHERE kind = 'plan'",
            "UPDATE sheet SET kind = 'plan' WHERE kind = 'design'",
            "DELETE FROM sheet WHERE kind = 'design'",
            "UPDATE instrument SET serial = '1'",
            "UPDATE instrument SET accuracy = 'exact'",
            "UPDATE instrument SET name = NULL",
            "DELETE FROM instrument",
            "UPDATE channel SET name = 'plus.current' WHERE name = 'plus.voltage'",
            "UPDATE channel SET name = 'nonsense'",
            "UPDATE channel SET unit = 'mV' WHERE name = 'plus.voltage'",
            "UPDATE channel SET name = CASE name WHEN 'plus.voltage' THEN 'minus.voltage' WHEN 'minus.voltage' THEN"
                    + " 'plus.voltage' ELSE name END",
            "DELETE FROM channel WHERE name = 'input.current'",
            "UPDATE step SET step = 'other'",
            "UPDATE step SET average_from_ns = average_from_ns + 5000000000",
            "UPDATE step SET average_to_ns = 0",
            "UPDATE step SET average_from_ns = -9223372036854775807, average_to_ns = 9223372036854775807",
            "UPDATE step SET settled = 0",
            "UPDATE step SET outcome = 'fine'",
            "UPDATE step SET outcome = 'not reached'",
            "UPDATE step SET input_volts = 1e308",
            "UPDATE step SET input_volts = 'lots'",
            "UPDATE step SET stage = NULL",
            "DELETE FROM step WHERE stage = 'load-sweep'",
            "UPDATE step_load SET amps = amps * 2",
            "UPDATE step_load SET amps = 9e999",
            "UPDATE event SET text = 'all was well'",
            "UPDATE event SET what = 'trip' WHERE what = 'end'",
            "UPDATE event SET text = NULL",
            "UPDATE event SET at_ns = 'noon'",
            "DELETE FROM event",
            "UPDATE ending SET state = 'tripped'",
            "UPDATE ending SET state = 'splendid'",
            "DELETE FROM ending",
            "INSERT INTO ending VALUES (999999, 1, 'complete')",
            "UPDATE summary SET highest = highest + 1",
            "DELETE FROM summary WHERE span_s = 10",
            "UPDATE summary SET total = 1e308",
            "UPDATE block SET packed = x'0102'",
            "UPDATE block SET packed = zeroblob(length(packed))",
            "UPDATE block SET channel = (SELECT min(channel) FROM block)",
            "UPDATE block SET from_ns = from_ns + 1",
            "DELETE FROM block WHERE first_seq = (SELECT min(first_seq) FROM block)",
            "INSERT INTO reading SELECT 999998, seq, 1, 2, 1e308, NULL FROM channel LIMIT 1",
            "INSERT INTO reading SELECT 999998, seq, 1, 2, 9e999, NULL FROM channel LIMIT 1",
            "UPDATE link SET digest = x'00' WHERE last_seq = (SELECT max(last_seq) FROM link)",
            "UPDATE link SET digest = NULL",
            "UPDATE link SET at_ns = 9223372036854775807",
            "DELETE FROM link WHERE last_seq = (SELECT max(last_seq) FROM link)",
            "DELETE FROM link",
            "PRAGMA user_version = 0",
            "DROP TABLE event; CREATE VIEW event AS WITH RECURSIVE n(seq) AS (SELECT 1 UNION ALL SELECT seq + 1 FROM n)"
                    + " SELECT seq, seq AS at_ns, 'x' AS what, 'y' AS text FROM n",
            "DROP TABLE session; CREATE VIEW session AS WITH RECURSIVE n(seq) AS (SELECT 1 UNION ALL SELECT seq + 1 FROM n)"
                    + " SELECT seq FROM n",
            "DROP TABLE link; CREATE TABLE link (last_seq, at_ns, digest)",
            "CREATE TRIGGER t AFTER INSERT ON note BEGIN DELETE FROM event; END",
            "DROP TABLE waveform");

    /** The reading commands; S is the session, O a place for what is made, W the whole session. */
    private static final List<List<String>> COMMANDS = List.of(
            List.of("findings", "S"),
            List.of("findings", "S", "--json"),
            List.of("verify", "S"),
            List.of("verify", "S", "--json"),
            List.of("export", "S", "--out", "O"),
            List.of("compare", "W", "S"),
            List.of("certificate", "S", "--out", "O.pdf"));

    private final Path folder;
    private final Random random;
    private final Path whole;
    private final Path other;
    private final String wholeFindings;
    private final List<String> wrong = new ArrayList<>();
    private final int[] ends = new int[6];
    private final ExecutorService worker = Executors.newCachedThreadPool(task -> {
        Thread thread = new Thread(task, "reading");
        thread.setDaemon(true);
        return thread;
    });
    private double slowestSeconds;
    private boolean talking;

    AlteredSessions(Path folder, long seed) {
        this.folder = folder;
        this.random = new Random(seed);
        this.whole = folder.resolve("whole.session");
        this.other = folder.resolve("other.session");
        Said.by("rehearse", "--out", whole.toString(), "--seed", "1");
        Said.by("rehearse", "--out", other.toString(), "--seed", "2");
        this.wholeFindings = Said.by("findings", whole.toString(), "--json").out();
    }

    public static void main(String[] arguments) throws Exception {
        int listed = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 60;
        int mutated = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 2000;
        long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : 1;
        try (AlteredSessions campaign = new AlteredSessions(Files.createTempDirectory("altered"), seed)) {
            campaign.talking = true;
            campaign.listed(listed);
            campaign.print(System.out, "listed alterations, every reading command");
            campaign.mutated(mutated);
            campaign.print(System.out, "with the mutated files");
        }
    }

    /** The first so many alterations of the list, or all of them, spread evenly over it. */
    void listed(int count) throws Exception {
        for (int i = 0; i < Math.min(count, ALTERATIONS.size()); i++) {
            String sql = ALTERATIONS.get(count >= ALTERATIONS.size() ? i : i * ALTERATIONS.size() / count);
            Path altered = copy();
            sql(altered, sql);
            for (List<String> command : COMMANDS) {
                Said said = run(sql, command, altered);
                if (said.exitCode() < 2) {
                    wrong(sql + ": " + command + " ended with " + said.exitCode() + ": " + first(said));
                }
            }
        }
    }

    /** Files altered byte by byte, page by page and row by row. */
    void mutated(int count) throws Exception {
        for (int i = 0; i < count; i++) {
            Path altered = copy();
            String what = mutate(altered);
            List<List<String>> commands = i % 25 == 0 ? COMMANDS : List.of(COMMANDS.get(1), COMMANDS.get(2 + i % 4));
            for (List<String> command : commands) {
                Said said = run(what, command, altered);
                if (command.equals(COMMANDS.get(1))
                        && said.exitCode() < 2
                        && !said.out().equals(wholeFindings)) {
                    wrong(what + ": findings of their own, ended with " + said.exitCode());
                }
            }
        }
    }

    private Said run(String what, List<String> command, Path altered) throws Exception {
        Path out = folder.resolve("out");
        clear(out);
        clear(folder.resolve("out.pdf"));
        String[] arguments = command.stream()
                .map(word -> word.equals("S") ? altered.toString() : word.equals("W") ? other.toString() : word)
                .map(word -> word.startsWith("O") ? out + word.substring(1) : word)
                .toArray(String[]::new);
        long[] own = new long[1];
        Future<Said> future = worker.submit(() -> {
            long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            Said said = Said.by(arguments);
            own[0] = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before;
            return said;
        });
        try {
            Said said = future.get(MOST_WALL_SECONDS, TimeUnit.SECONDS);
            check(what, command, said, own[0]);
            return said;
        } catch (TimeoutException | ExecutionException e) {
            wrong(what + ": " + command + ": " + e);
            return new Said(4, "", "");
        }
    }

    private void check(String what, List<String> command, Said said, long cpuNanos) {
        ends[Math.min(5, Math.max(0, said.exitCode()))]++;
        String all = said.out() + said.err();
        if (all.contains("Exception") || all.contains("\tat ") || all.contains("a mistake in the program")) {
            wrong(what + ": " + command + ": " + first(said));
        }
        if (said.exitCode() == 4
                && command.get(0).equals("findings")
                && command.size() == 2
                && !(said.out() + said.err()).lines().findFirst().orElse("").matches("(?i).*(session|file).*")) {
            wrong(what + ": " + command + ": the first line does not say it: " + first(said));
        }
        slowestSeconds = Math.max(slowestSeconds, cpuNanos / 1e9);
        if (cpuNanos > MOST_CPU_NANOS) {
            wrong(what + ": " + command + " took " + cpuNanos / 1e9 + " s");
        }
    }

    private static String first(Said said) {
        return (said.err() + said.out()).lines().limit(2).toList().toString();
    }

    private Path copy() throws IOException {
        return Files.copy(whole, folder.resolve("altered.session"), StandardCopyOption.REPLACE_EXISTING);
    }

    private static void sql(Path file, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            for (String one : sql.startsWith("CREATE TRIGGER") ? List.of(sql) : List.of(sql.split("; "))) {
                statement.executeUpdate(one);
            }
        }
    }

    private String mutate(Path file) throws Exception {
        return switch (random.nextInt(6)) {
            case 0 -> flip(file, 1 + random.nextInt(3));
            case 1 -> flip(file, 200);
            case 2 -> cut(file);
            case 3 -> swapPages(file);
            default -> row(file);
        };
    }

    private String flip(Path file, int count) throws IOException {
        StringBuilder where = new StringBuilder("bytes");
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
            for (int i = 0; i < count; i++) {
                long at = (long) (random.nextDouble() * (random.nextInt(4) == 0 ? 4096 : raw.length()));
                raw.seek(at);
                int before = raw.read();
                raw.seek(at);
                raw.write(before ^ 1 << random.nextInt(8));
                where.append(i < 5 ? " " + at : "");
            }
        }
        return where.toString();
    }

    private String cut(Path file) throws IOException {
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
            long length = (long) (random.nextDouble() * raw.length());
            raw.setLength(length);
            return "cut to " + length;
        }
    }

    private String swapPages(Path file) throws IOException {
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
            int pages = (int) (raw.length() / 4096);
            int from = 1 + random.nextInt(pages - 1);
            int to = 1 + random.nextInt(pages - 1);
            byte[] page = new byte[4096];
            raw.seek(4096L * from);
            raw.readFully(page);
            byte[] there = new byte[4096];
            raw.seek(4096L * to);
            raw.readFully(there);
            raw.seek(4096L * to);
            raw.write(page);
            if (random.nextBoolean()) {
                raw.seek(4096L * from);
                raw.write(there);
            }
            return "page " + from + " to " + to;
        }
    }

    private String row(Path file) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            List<String> tables = texts(statement, "SELECT name FROM sqlite_master WHERE type = 'table'");
            String table = tables.get(random.nextInt(tables.size()));
            List<String> columns = texts(statement, "SELECT name FROM pragma_table_info('" + table + "')");
            String column = columns.get(random.nextInt(columns.size()));
            String value = List.of(
                            "NULL",
                            "1e308",
                            "-1e308",
                            "9e999",
                            "9223372036854775807",
                            "-1",
                            "0",
                            "''",
                            "'x'",
                            "x'ff'",
                            "zeroblob(100000)",
                            "char(27) || '[31m'",
                            "hex(zeroblob(50000))",
                            "1.5",
                            "'\u202e'")
                    .get(random.nextInt(15));
            String sql = random.nextInt(4) == 0
                    ? "DELETE FROM " + table + (random.nextBoolean() ? "" : " WHERE random() % 2")
                    : "UPDATE OR IGNORE " + table + " SET " + column + " = " + value
                            + (random.nextBoolean() ? "" : " WHERE random() % 3 = 0");
            try {
                statement.executeUpdate(sql);
            } catch (SQLException e) {
                return sql + " (refused by SQLite)";
            }
            return sql;
        }
    }

    private static List<String> texts(Statement statement, String sql) throws SQLException {
        List<String> texts = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                texts.add(rows.getString(1));
            }
        }
        return texts;
    }

    private static void clear(Path path) throws IOException {
        if (Files.exists(path)) {
            try (Stream<Path> all = Files.walk(path)) {
                for (Path one : all.sorted((a, b) -> b.compareTo(a)).toList()) {
                    Files.delete(one);
                }
            }
        }
    }

    /** Said at once too: a campaign takes long. */
    private void wrong(String what) {
        wrong.add(what);
        if (talking) {
            System.err.println(what);
        }
    }

    List<String> wrong() {
        return wrong;
    }

    double slowestSeconds() {
        return slowestSeconds;
    }

    void print(PrintStream out, String title) {
        out.printf(
                Locale.ROOT,
                "%s: ended with 0: %d, 1: %d, 2: %d, 3: %d, 4: %d, 5: %d; slowest %.1f s; wrong %d%n",
                title,
                ends[0],
                ends[1],
                ends[2],
                ends[3],
                ends[4],
                ends[5],
                slowestSeconds,
                wrong.size());
        wrong.forEach(line -> out.println("  " + line));
    }

    @Override
    public void close() {
        worker.shutdownNow();
    }
}
