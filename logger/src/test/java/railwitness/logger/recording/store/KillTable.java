package railwitness.logger.recording.store;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;

/**
 * Kills a recording process (SIGKILL) at random instants and looks at what is left. Arguments: how many kills (200), a
 * folder, a seed.
 */
final class KillTable {
    /**
     * What was left after a kill.
     *
     * @param said how many readings the recorder had said to be safe
     * @param found how many are there
     * @param fault what is not intact; empty when all is
     */
    record Left(long said, long found, String fault) {
        boolean isGood() {
            return found >= said && fault.isEmpty();
        }
    }

    private KillTable() {}

    public static void main(String[] arguments) throws Exception {
        int kills = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 200;
        Path folder = arguments.length > 1 ? Path.of(arguments[1]) : Files.createTempDirectory("kills");
        long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : 1;
        Random random = new Random(seed);
        long said = 0;
        long found = 0;
        int good = 0;
        for (int i = 0; i < kills; i++) {
            Left left = kill(folder.resolve("kill-" + i + ".session"), random.nextLong(), random.nextInt(1500));
            said += left.said();
            found += left.found();
            good += left.isGood() ? 1 : 0;
            if (!left.isGood()) {
                System.out.println("kill " + i + ": " + left);
            }
        }
        System.out.println("kills   seed   said safe   found there   acknowledged lost   intact, nothing lost");
        System.out.printf(
                Locale.ROOT,
                "%5d %6d %11d %13d %19d %22s%n",
                kills,
                seed,
                said,
                found,
                Math.max(0, said - found),
                good + " of " + kills);
    }

    /** Lets a process record for some milliseconds beyond its first commit, kills it, and looks. */
    static Left kill(Path file, long seed, int millis) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(Child.command(Victim.class, file, seed, 0))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        long said = 0;
        try (BufferedReader out = new BufferedReader(new InputStreamReader(process.getInputStream()))) {
            String line = out.readLine();
            TimeUnit.MILLISECONDS.sleep(millis);
            // Through the handle: the process's own method would close the stream that is still to be read.
            process.toHandle().destroyForcibly();
            process.waitFor();
            for (; line != null; line = out.readLine()) {
                said = Long.parseLong(line);
            }
        }
        return look(file, said);
    }

    /** Verifies what is left, compares it with what was recorded, and clears it away. */
    static Left look(Path file, long said) throws IOException {
        Verification verification = Verification.of(file);
        String fault = String.join("; ", verification.faults()) + firstDifference(file);
        for (String tail : new String[] {"", "-wal", "-shm", "-held", "-reserve"}) {
            Files.deleteIfExists(file.resolveSibling(file.getFileName() + tail));
        }
        return new Left(said, verification.readings(), fault);
    }

    private static String firstDifference(Path file) {
        BenchNoise noise = new BenchNoise(1);
        try (SessionFile session = SessionFile.open(file)) {
            if (session.channels().isEmpty()) {
                return "";
            }
            double[] values =
                    session.trace(noise.channels().get(0), TimeSpan.ALL).values();
            for (double value : values) {
                if (((railwitness.drivers.reading.Measured) noise.next()).value() != value) {
                    return "a reading is not as it was recorded";
                }
                for (int i = 1; i < noise.channels().size(); i++) {
                    noise.next();
                }
            }
            return "";
        }
    }
}
