package railwitness.logger.recording.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * Cuts the power at random instants of a recording: every write, truncation and sync of a real recording is logged
 * ({@code src/test/native/writelog.c}, needs a C compiler on Linux); for a cut, everything synced before it is kept, and
 * of what was not yet synced each sector of 512 bytes is kept or lost at random, in half of the cuts all of it is lost.
 * Arguments: how many cuts (20), a folder, a seed.
 */
final class PowerCutTable {
    private static final int SECTOR = 512;

    /** An entry of the log. */
    private record Step(char operation, String name, long offset, byte[] bytes) {}

    private final List<Step> steps;
    private final Random random;

    private PowerCutTable(List<Step> steps, Random random) {
        this.steps = steps;
        this.random = random;
    }

    public static void main(String[] arguments) throws Exception {
        int cuts = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 20;
        Path folder = arguments.length > 1 ? Path.of(arguments[1]) : Files.createTempDirectory("cuts");
        long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : 1;
        List<KillTable.Left> left = cut(folder, seed, 120, cuts, Path.of("logger/src/test/native/writelog.c"));
        System.out.println("cuts    seed   said safe   found there   acknowledged lost   intact, nothing lost");
        System.out.printf(
                Locale.ROOT,
                "%4d %7d %11d %13d %19d %22s%n",
                cuts,
                seed,
                left.stream().mapToLong(KillTable.Left::said).sum(),
                left.stream().mapToLong(KillTable.Left::found).sum(),
                left.stream().mapToLong(l -> Math.max(0, l.said() - l.found())).sum(),
                left.stream().filter(KillTable.Left::isGood).count() + " of " + cuts);
        left.stream().filter(l -> !l.isGood()).forEach(System.out::println);
    }

    /** True where the log can be made. */
    static boolean isPossible() {
        return System.getProperty("os.name").equals("Linux") && Files.isExecutable(Path.of("/usr/bin/cc"));
    }

    /** Records so many commits once and cuts the power so many times. */
    static List<KillTable.Left> cut(Path folder, long seed, int commits, int cuts, Path source) throws Exception {
        Path log = record(folder, seed, commits, source);
        PowerCutTable table = new PowerCutTable(read(log), new Random(seed));
        Files.delete(log);
        List<KillTable.Left> left = new ArrayList<>();
        for (int i = 0; i < cuts; i++) {
            left.add(table.cutOnce(folder.resolve("cut-" + i + ".session")));
        }
        return left;
    }

    private static Path record(Path folder, long seed, int commits, Path source)
            throws IOException, InterruptedException {
        Path library = folder.resolve("writelog.so");
        run(new ProcessBuilder(
                "/usr/bin/cc", "-O1", "-shared", "-fPIC", "-o", library.toString(), source.toString(), "-ldl"));
        Path log = folder.resolve("write.log");
        Path file = folder.toRealPath().resolve("victim.session");
        ProcessBuilder victim = new ProcessBuilder(Child.command(Victim.class, file, seed, commits));
        victim.environment().put("LD_PRELOAD", library.toString());
        victim.environment().put("WRITELOG", log.toString());
        victim.environment().put("WRITELOG_FILE", file.toString());
        run(victim);
        return log;
    }

    private static void run(ProcessBuilder builder) throws IOException, InterruptedException {
        Process process = builder.redirectError(ProcessBuilder.Redirect.INHERIT).start();
        process.getInputStream().readAllBytes();
        if (process.waitFor() != 0) {
            throw new IllegalStateException(builder.command() + " ended with " + process.exitValue());
        }
    }

    private static List<Step> read(Path log) throws IOException {
        ByteBuffer in = ByteBuffer.wrap(Files.readAllBytes(log)).order(ByteOrder.LITTLE_ENDIAN);
        List<Step> steps = new ArrayList<>();
        while (in.hasRemaining()) {
            char operation = (char) in.get();
            byte[] name = new byte[in.getShort()];
            long offset = in.getLong();
            byte[] bytes = new byte[(int) in.getLong()];
            in.get(name).get(bytes);
            steps.add(new Step(operation, new String(name, StandardCharsets.UTF_8), offset, bytes));
        }
        return steps;
    }

    private KillTable.Left cutOnce(Path file) throws IOException {
        int first = 0;
        while (steps.get(first).operation != 'A') {
            first++;
        }
        int at = first + 1 + random.nextInt(steps.size() - first - 1);
        double kept = random.nextBoolean() ? 0 : random.nextDouble();
        long said = 0;
        Map<String, Platter> platters = new HashMap<>();
        for (Step step : steps.subList(0, at)) {
            if (step.operation == 'A') {
                said = Long.parseLong(new String(step.bytes, StandardCharsets.US_ASCII).trim());
            } else {
                platters.computeIfAbsent(step.name.endsWith("-wal") ? "-wal" : "", n -> new Platter())
                        .take(step);
            }
        }
        for (Map.Entry<String, Platter> platter : platters.entrySet()) {
            Files.write(
                    file.resolveSibling(file.getFileName() + platter.getKey()),
                    platter.getValue().afterCut(kept, random));
        }
        return KillTable.look(file, said);
    }

    /** What a file's part of the disk holds: what is safe, and what was written since the last sync. */
    private static final class Platter {
        private byte[] safe = new byte[0];
        private final List<Step> unsafe = new ArrayList<>();

        void take(Step step) {
            if (step.operation == 'S') {
                for (Step one : unsafe) {
                    safe = apply(safe, one, 1, null);
                }
                unsafe.clear();
            } else {
                unsafe.add(step);
            }
        }

        byte[] afterCut(double kept, Random random) {
            byte[] bytes = safe;
            for (Step one : unsafe) {
                bytes = apply(bytes, one, kept, random);
            }
            return bytes;
        }

        private static byte[] apply(byte[] bytes, Step step, double kept, Random random) {
            if (step.operation == 'T') {
                return kept == 1 || random.nextDouble() < kept ? Arrays.copyOf(bytes, (int) step.offset) : bytes;
            }
            byte[] result = kept == 1 ? bytes : bytes.clone();
            for (int from = 0; from < step.bytes.length; from += SECTOR) {
                int length = Math.min(SECTOR, step.bytes.length - from);
                if (kept == 1 || random.nextDouble() < kept) {
                    int to = (int) step.offset + from;
                    result = result.length < to + length ? Arrays.copyOf(result, to + length) : result;
                    System.arraycopy(step.bytes, from, result, to, length);
                }
            }
            return result;
        }
    }
}
