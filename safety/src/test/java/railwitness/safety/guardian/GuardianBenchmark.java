package railwitness.safety.guardian;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * How long it takes until the supply is told off after its program died. Prints a table. Arguments: kills, freezes, MB
 * of touched heap of the program that dies.
 */
final class GuardianBenchmark {
    private static final Duration LONG = Duration.ofSeconds(20);

    /** Milliseconds of each try, and how many were missed. */
    record Times(String what, List<Double> millis, int missed) {
        double at(double share) {
            double[] sorted =
                    millis.stream().mapToDouble(Double::doubleValue).sorted().toArray();
            return sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
        }

        String row() {
            return String.format(
                    Locale.ROOT,
                    "| %s | %d | %d | %.1f | %.1f | %.1f |",
                    what,
                    millis.size(),
                    missed,
                    at(0.5),
                    at(0.99),
                    at(1));
        }
    }

    private enum Death {
        KILL,
        STOP
    }

    private GuardianBenchmark() {}

    public static void main(String[] arguments) throws Exception {
        int kills = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 100;
        int freezes = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 20;
        int megabytes = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 64;
        System.out.println("| from | tries | missed | median ms | p99 ms | max ms |");
        System.out.println("|---|---|---|---|---|---|");
        for (Times times : run(kills, freezes, megabytes)) {
            System.out.println(times.row());
        }
    }

    static List<Times> run(int kills, int freezes, int megabytes) throws Exception {
        List<Times> all = new ArrayList<>();
        List<Double> released = new ArrayList<>();
        all.add(times("kill -9 to the first byte of off", Death.KILL, kills, megabytes, released));
        all.add(times("SIGSTOP to the first byte of off", Death.STOP, freezes, megabytes, released));
        all.add(new Times("first byte of off to the ports let go", released, 0));
        return all;
    }

    private static Times times(String what, Death death, int tries, int megabytes, List<Double> released)
            throws Exception {
        List<Double> millis = new ArrayList<>();
        int missed = 0;
        for (int i = 0; i < tries; i++) {
            try (FarEnd supply = new FarEnd();
                    FarEnd load = new FarEnd();
                    Victims victim = new Victims("", "beat", megabytes, supply.device(), load.device())) {
                Thread.sleep(50 + 13L * (i % 10));
                long start = System.nanoTime();
                if (death == Death.KILL) {
                    victim.kill();
                } else {
                    victim.signal("STOP");
                }
                FarEnd.Heard off = supply.await("OUTP OFF"::equals, LONG);
                millis.add((off.firstByteNanos() - start) / 1e6);
                victim.awaitGuardiansEnd();
                released.add((System.nanoTime() - off.firstByteNanos()) / 1e6);
                missed += supply.isOn() || !load.messages().contains("INP OFF") ? 1 : 0;
            } catch (AssertionError neverCame) {
                missed++;
            }
        }
        return new Times(what, millis, missed);
    }

    static String rows(List<Times> all) {
        return all.stream().map(Times::row).collect(java.util.stream.Collectors.joining("\n"));
    }
}
