package railwitness.drivers.converter;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * How long drawn units take through a session of the virtual bench: 40 s of power up, load steps and a weak source.
 * Prints the slowest units beside the median. Arguments: units, first seed.
 */
final class SolverPaceTable {
    private SolverPaceTable() {}

    /** What one unit took. */
    record Pace(long seed, double milliseconds, long steps, double volts) {}

    public static void main(String[] arguments) {
        int units = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 200;
        long first = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        List<Pace> all = paces(units, first);
        all.sort(Comparator.comparingDouble(Pace::milliseconds));
        double median = all.get(all.size() / 2).milliseconds();
        System.out.printf(Locale.ROOT, "%d units, median %.1f ms%n", units, median);
        for (Pace pace : all.subList(Math.max(0, all.size() - 12), all.size())) {
            System.out.printf(
                    Locale.ROOT,
                    "seed %d: %.1f ms, %.1f of the median, %d steps, rails %.4f V%n",
                    pace.seed(),
                    pace.milliseconds(),
                    pace.milliseconds() / median,
                    pace.steps(),
                    pace.volts());
        }
    }

    static List<Pace> paces(int units, long first) {
        List<Pace> all = new ArrayList<>();
        for (long seed = first; seed < first + units; seed++) {
            all.add(pace(seed));
        }
        return all;
    }

    private static Pace pace(long seed) {
        Random random = new Random(seed);
        Specimen unit = drawn(random);
        LiveUnit live = new LiveUnit(unit, 23);
        double volts = 8 + 8 * random.nextDouble();
        double limit = Math.pow(10, 0.3 + 1.7 * random.nextDouble());
        double full = Math.pow(10, -0.7 + 1.7 * random.nextDouble());
        double loose = random.nextDouble();
        long began = System.nanoTime();
        long steps = 0;
        for (double share : new double[] {0, 0.25, 1, 0.5, 1.5 + loose, 0}) {
            List<Draw> draws =
                    unit.rails().stream().map(rail -> Draw.amps(full * share)).toList();
            live.disturb();
            double left = 6.7;
            while (left > 1e-9) {
                left -= live.step(Feed.of(volts, limit), draws, true, left);
                steps++;
            }
        }
        double taken = (System.nanoTime() - began) / 1e6;
        return new Pace(seed, taken, steps, live.balance().rails().get(0).volts());
    }

    /** A unit of any make within what a specimen may be. */
    static Specimen drawn(Random random) {
        Specimen usual = Specimen.usual();
        var core = usual.transformer();
        double secondary = core.secondaryOhm1() * spread(random, 3);
        Specimen.Drive drive = usual.drive();
        List<Specimen.Rail> rails = usual.rails().stream()
                .map(rail -> rail.withCapacitor(
                        rail.capacitorFarad() * spread(random, 5), rail.capacitorEsrOhm() * spread(random, 5)))
                .toList();
        boolean regulated = random.nextInt(3) == 0;
        return usual.withTransformer(core.withSecondaryOhm(secondary, secondary * spread(random, 1.2)))
                .withDrive(new Specimen.Drive(
                        drive.frequencyHz() * spread(random, 2),
                        0.3 + 0.195 * random.nextDouble(),
                        drive.startVolts(),
                        drive.dropOutVolts(),
                        random.nextDouble(),
                        drive.controlAmps(),
                        drive.gateWatts(),
                        drive.standbyAmps(),
                        regulated ? OptionalDouble.of(15 + 25 * random.nextDouble()) : OptionalDouble.empty()))
                .withRails(random.nextBoolean() ? Specimen.Filter.CHOKE : Specimen.Filter.CAPACITOR, rails);
    }

    private static double spread(Random random, double factor) {
        return Math.pow(factor, 2 * random.nextDouble() - 1);
    }
}
