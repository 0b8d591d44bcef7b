package railwitness.logger.ui.command;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;

/**
 * Every command that reads a file, with every hostile file: refused in words, within ten seconds of the processor and thirty
 * by the clock, with 2, or with 4 where a session was asked for; nothing made, no verdict. Argument: every how many pairs one
 * is tried (1: all). Ends with 1 when one was not refused so.
 */
public final class HostileCampaign implements AutoCloseable {
    private static final long LONGEST_SECONDS = 10;

    private final Path folder;
    private final Path good;
    private final Path table;
    private final Path design;
    private final HostileFiles files;
    private final List<String> wrong = new ArrayList<>();
    private final Map<String, Double> slowest = new LinkedHashMap<>();
    private final ExecutorService worker = Executors.newCachedThreadPool(task -> {
        Thread thread = new Thread(task, "hostile");
        thread.setDaemon(true);
        return thread;
    });
    private int pairs;

    HostileCampaign(Path folder) throws IOException {
        this.folder = folder;
        good = folder.resolve("good.session");
        design = Path.of("../sessions-sample/demo/design.toml").toAbsolutePath();
        table = Files.writeString(
                folder.resolve("good.csv"), "time_s,stage,step,plus.voltage_V\n0,no-load,a,36\n1,no-load,a,36\n");
        Said said = Said.by("import", table.toString(), "--design", design.toString(), "--out", good.toString());
        if (said.exitCode() != 0) {
            throw new IllegalStateException("the good session could not be made: " + said.err());
        }
        files = new HostileFiles(Files.createDirectory(folder.resolve("hostile")), good);
    }

    public static void main(String[] arguments) throws IOException {
        int every = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1;
        Path folder = Files.createTempDirectory("hostile");
        int faults;
        try (HostileCampaign campaign = new HostileCampaign(folder)) {
            campaign.run(every);
            System.out.print(campaign.files.leftOut());
            System.out.println(campaign.pairs + " pairs of command and file, wrong: " + campaign.wrong.size());
            campaign.slowest.entrySet().stream()
                    .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
                    .limit(5)
                    .forEach(one -> System.out.printf(Locale.ROOT, "%.1f s: %s%n", one.getValue(), one.getKey()));
            campaign.wrong.forEach(line -> System.out.println("  " + line));
            faults = campaign.wrong.size();
        }
        try (Stream<Path> made = Files.walk(folder)) {
            for (Path one : made.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(one);
            }
        }
        System.exit(faults == 0 ? 0 : 1);
    }

    /** F is the hostile file, G a good session, T a good table, D a good design sheet, O what is to be made. */
    private static Map<String, String> commands() {
        Map<String, String> commands = new LinkedHashMap<>();
        commands.put("check", "check F");
        commands.put("check beside a good sheet", "check D F");
        commands.put("rehearse, design", "rehearse --design F --out O");
        commands.put("rehearse, bench", "rehearse --bench F --out O");
        commands.put("rehearse, plan", "rehearse --plan F --out O");
        commands.put("rehearse, sister", "rehearse --sister F --out O");
        commands.put("import", "import F --out O");
        commands.put("import, design", "import T --design F --out O");
        commands.put("import, bench", "import T --bench F --out O");
        commands.put("import, semicolons", "import F --separator semicolon --units cells --out O");
        commands.put("import, comma", "import F --separator semicolon --decimal comma --out O");
        commands.put("import, instants", "import F --time iso8601 --out O");
        commands.put("import-trace", "import-trace F --out O");
        commands.put("import-trace, session", "import-trace T --rail plus --session F --out O");
        commands.put("import-trace, design", "import-trace T --rail plus --design F --out O");
        commands.put("findings", "findings F");
        commands.put("findings, JSON", "findings F --json");
        commands.put("findings, whole", "findings F --whole");
        commands.put("findings, budget", "findings F --budget ripple");
        commands.put("certificate", "certificate F --out O");
        commands.put("certificate, before", "certificate G --before F --out O");
        commands.put("verify", "verify F");
        commands.put("verify, JSON", "verify F --json");
        commands.put("verify, certificate", "verify G F");
        commands.put("compare, first", "compare F G");
        commands.put("compare, second", "compare G F");
        commands.put("compare, paper", "compare F G --out O");
        commands.put("export", "export F --out O");
        return commands;
    }

    /** Every so manieth pair, so that each file and each command comes up. */
    void run(int every) throws IOException {
        int at = 0;
        for (Map.Entry<String, Path> file : files.all().entrySet()) {
            for (Map.Entry<String, String> command : commands().entrySet()) {
                if (at++ % every == 0) {
                    pair(command, file);
                }
            }
        }
    }

    private void pair(Map.Entry<String, String> command, Map.Entry<String, Path> file) throws IOException {
        pairs++;
        String what = command.getKey() + " with " + file.getKey();
        Path out = folder.resolve("made");
        long[] own = new long[1];
        Future<Said> answer = worker.submit(() -> {
            long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            Said said = Said.by(arguments(command.getValue(), file.getValue(), out));
            own[0] = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before;
            return said;
        });
        try {
            Said said = answer.get(3 * LONGEST_SECONDS, TimeUnit.SECONDS);
            check(what, said);
            boolean asItStands = said.err().contains("it is exported as it stands");
            if (Files.exists(out) && !asItStands) {
                wrong.add(what + ": left something behind");
            }
        } catch (TimeoutException | ExecutionException e) {
            wrong.add(what + ": " + e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        double seconds = own[0] / 1e9;
        slowest.put(what, seconds);
        if (seconds > LONGEST_SECONDS) {
            wrong.add(String.format(Locale.ROOT, "%s took %.0f s", what, seconds));
        }
        if (Files.exists(out)) {
            clear(out);
        }
    }

    private String[] arguments(String command, Path file, Path out) {
        return Stream.of(command.split(" "))
                .map(word -> switch (word) {
                    case "F" -> file.toString();
                    case "G" -> good.toString();
                    case "T" -> table.toString();
                    case "D" -> design.toString();
                    case "O" -> out.toString();
                    default -> word;
                })
                .toArray(String[]::new);
    }

    private void check(String what, Said said) {
        String all = said.out() + said.err();
        List<String> faults = new ArrayList<>();
        if (said.exitCode() != 2 && said.exitCode() != 4) {
            faults.add("ended with " + said.exitCode());
        }
        if (all.contains("\tat ") || all.contains("Exception") || all.contains("mistake in the program")) {
            faults.add("a trace");
        }
        if (all.chars().anyMatch(c -> c == 0x202E || c == 0x1B || c == 0x85)) {
            faults.add("signs that act");
        }
        boolean sheetFaults = said.err().lines().allMatch(line -> line.matches(".*\\.toml:\\d+: .*"));
        long lines = said.err().lines().count();
        if (said.exitCode() == 2 && lines != 1 && (!sheetFaults || lines > 41)) {
            faults.add(lines + " lines");
        }
        if (all.isBlank() || said.err().length() > 20_000) {
            faults.add(said.err().length() + " characters");
        }
        if (said.out().toLowerCase(Locale.ROOT).matches("(?s).*(\\bfit to return|not fit|\"verdict\" : \"(?!not)).*")) {
            faults.add("a verdict");
        }
        if (!faults.isEmpty()) {
            String words = (said.err() + said.out()).replaceAll("\\s+", " ");
            wrong.add(what + ": " + faults + ": " + words.substring(0, Math.min(300, words.length())));
        }
    }

    private static void clear(Path made) throws IOException {
        try (Stream<Path> all = Files.walk(made)) {
            for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(one);
            }
        }
    }

    List<String> wrong() {
        return wrong;
    }

    int pairs() {
        return pairs;
    }

    @Override
    public void close() {
        worker.shutdownNow();
    }
}
