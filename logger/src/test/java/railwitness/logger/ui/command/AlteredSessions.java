package railwitness.logger.ui.command;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
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
import railwitness.logger.recording.sheet.Sheets;

/**
 * Alters sessions as a forger or an accident would and hands each to the commands that read sessions. From the command
 * line: how many listed alterations go through every reading command (60), how many mutated files (2000), the seed (1);
 * prints how each kind ended. What is never right: a trace, a mistake in the program, more than ten seconds, a verdict or a
 * figure that the whole session does not have.
 */
public final class AlteredSessions implements AutoCloseable {
    private static final long MOST_CPU_NANOS = 10_000_000_000L;
    private static final long MOST_WALL_SECONDS = 90;

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
    private final SessionMutation mutation;
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

    AlteredSessions(Path folder, long seed) throws IOException {
        this.folder = folder;
        this.mutation = new SessionMutation(new Random(seed));
        this.whole = folder.resolve("whole.session");
        this.other = folder.resolve("other.session");
        Path plan = folder.resolve("plan.toml");
        Files.writeString(plan, fewSteps(Sheets.demo().plan().text()));
        Said.by("rehearse", "--plan", plan.toString(), "--out", whole.toString(), "--seed", "1");
        Said.by("rehearse", "--plan", plan.toString(), "--out", other.toString(), "--seed", "2");
        Said findings = Said.by("findings", whole.toString(), "--json");
        if (findings.exitCode() != 0 || findings.json().get("points").size() < 4) {
            throw new IllegalStateException("the session to be altered could not be made: " + findings.err());
        }
        this.wholeFindings = findings.out();
    }

    /** The demo's plan up to its load sweep, which has two steps: every kind of row is there, and many are quickly read. */
    private static String fewSteps(String plan) {
        return plan.substring(0, plan.indexOf("[[stage]]\nkind = \"line-sweep\""))
                .replaceFirst("loads_pct = \\[.*]", "loads_pct = [50, 100]");
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
        for (int i = 0; i < Math.min(count, ListedAlterations.ALL.size()); i++) {
            String sql = ListedAlterations.ALL.get(
                    count >= ListedAlterations.ALL.size() ? i : i * ListedAlterations.ALL.size() / count);
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
            if (talking && i % 100 == 0) {
                System.err.println(i + " mutated, wrong: " + wrong.size());
            }
            Path altered = copy();
            String what = mutation.to(altered);
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
            statement.execute("PRAGMA synchronous = OFF");
            for (String one : sql.startsWith("CREATE TRIGGER") ? List.of(sql) : List.of(sql.split("; "))) {
                statement.executeUpdate(one);
            }
        }
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
