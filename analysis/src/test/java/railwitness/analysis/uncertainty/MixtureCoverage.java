package railwitness.analysis.uncertainty;

import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * What a frequentist counts: errors drawn from their shapes, scatter estimated anew from ten readings each time. How
 * often does the stated 95 % interval hold the truth?
 *
 * <p>Arguments: trials (4000), seed (4711). The command stands in {@code analysis/README.md}.
 */
public final class MixtureCoverage {
    private static final int READINGS = 10;

    private final SplittableRandom random;

    MixtureCoverage(long seed) {
        random = new SplittableRandom(seed);
    }

    /** Standard uncertainties of two rectangles and of the mean of readings. */
    static List<double[]> mixtures() {
        return List.of(
                new double[] {1, 0, 0},
                new double[] {1, 1, 0},
                new double[] {1, 1, 1},
                new double[] {0.2, 0, 1},
                new double[] {1, 0.5, 0.3},
                new double[] {0.5, 0.5, 1},
                new double[] {0.1, 0.1, 1});
    }

    double share(double[] mixture, int trials) {
        int inside = 0;
        for (int trial = 0; trial < trials; trial++) {
            double error = rectangle(mixture[0]) + rectangle(mixture[1]);
            double[] drawn = new double[READINGS];
            for (int i = 0; i < READINGS; i++) {
                drawn[i] = error + mixture[2] * Math.sqrt(READINGS) * random.nextGaussian();
            }
            Estimate mean = Estimate.fromSimultaneous(List.of(drawn))
                    .get(0)
                    .with(Influence.rectangular("gain", mixture[0] * Math.sqrt(3), "V")
                            .times(1))
                    .with(Influence.rectangular("offset", mixture[1] * Math.sqrt(3), "V")
                            .times(1));
            inside += Math.abs(mean.value()) <= mean.coverage(0.95).expanded() ? 1 : 0;
        }
        return inside / (double) trials;
    }

    private double rectangle(double u) {
        return u * Math.sqrt(3) * (2 * random.nextDouble() - 1);
    }

    public static void main(String[] arguments) {
        int trials = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 4_000;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 4_711;
        MixtureCoverage coverage = new MixtureCoverage(seed);
        System.out.println(trials + " trials, seed " + seed);
        System.out.println();
        System.out.println("| u of two rectangles | u of the mean of 10 readings | truth inside, % |");
        System.out.println("|---|---|---|");
        for (double[] mixture : mixtures()) {
            System.out.printf(
                    Locale.ROOT,
                    "| %.1f and %.1f | %.1f | %.1f |%n",
                    mixture[0],
                    mixture[1],
                    mixture[2],
                    100 * coverage.share(mixture, trials));
        }
    }
}
