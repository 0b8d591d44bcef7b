package railwitness.analysis.soak;

import java.util.Locale;
import java.util.SplittableRandom;
import railwitness.analysis.uncertainty.Estimate;

/** How often the final temperature lies in its band, for the table in the README of this module. */
final class WarmUpCampaign {
    private WarmUpCampaign() {}

    /** Share of cases inside and median half-width, K. */
    record Outcome(double inside, double halfWidth, double slowInside) {}

    static Outcome run(long seed, int cases, double timeConstants, int n, double sigma, double phi, int kind) {
        int inside = 0;
        int slow = 0;
        double[] widths = new double[cases];
        for (int k = 0; k < cases; k++) {
            SplittableRandom random = new SplittableRandom(seed + k);
            TwoBodies made = kind < 2
                    ? TwoBodies.of(random, timeConstants, n, sigma, phi, kind == 0)
                    : exponentials(random, timeConstants, n, sigma, phi, kind);
            WarmUp fit = WarmUp.of(made.seconds(), made.celsius()).orElseThrow();
            Estimate end = fit.finalCelsius();
            double u = end.coverage(0.95).expanded();
            inside += Math.abs(end.value() - made.end()) <= u ? 1 : 0;
            widths[k] = u;
            Estimate tau = fit.timeConstantSeconds();
            slow += Math.abs(tau.value() - made.slowSeconds())
                            <= tau.coverage(0.95).expanded()
                    ? 1
                    : 0;
        }
        java.util.Arrays.sort(widths);
        return new Outcome(inside / (double) cases, widths[cases / 2], slow / (double) cases);
    }

    /** Kind 2: one exponential. Kind 3: two, the fast one with 10 to 40 % of the rise. Kind 4: fixed, like a handbook. */
    private static TwoBodies exponentials(
            SplittableRandom random, double timeConstants, int n, double sigma, double phi, int kind) {
        double slow = 600 + 3000 * random.nextDouble();
        double ratio = kind == 4 ? 0.15 : 0.03 + 0.3 * random.nextDouble();
        double share = kind == 2 ? 0 : kind == 4 ? 0.3 : 0.1 + 0.3 * random.nextDouble();
        double rise = kind == 4 ? 40 : 15 + 40 * random.nextDouble();
        double[] t = new double[n];
        double[] y = new double[n];
        double noise = sigma * random.nextGaussian();
        for (int i = 0; i < n; i++) {
            t[i] = (i + 1) * timeConstants * slow / n;
            noise = phi * noise + Math.sqrt(1 - phi * phi) * sigma * random.nextGaussian();
            y[i] = 20
                    + rise * (1 - (1 - share) * Math.exp(-t[i] / slow) - share * Math.exp(-t[i] / slow / ratio))
                    + noise;
        }
        return new TwoBodies(t, y, 20 + rise, slow);
    }

    /** Argument: cases of each of the five kinds, for every length and memory. */
    public static void main(String[] words) {
        int cases = words.length > 0 ? Integer.parseInt(words[0]) : 2000;
        String[] names = {"heated body", "other body", "one exponential", "two exponentials", "handbook"};
        System.out.println("final temperature within its band, " + cases + " cases of each of five kinds, seed 1");
        for (double phi : new double[] {0, 0.8}) {
            for (double taus : new double[] {1.5, 2, 3, 5}) {
                StringBuilder line = new StringBuilder();
                double all = 0;
                for (int kind = 0; kind < names.length; kind++) {
                    Outcome found = run(1, cases, taus, 400, 0.1, phi, kind);
                    all += found.inside() / names.length;
                    line.append(String.format(
                            Locale.ROOT,
                            "; %s %.1f %% (U %.2f K)",
                            names[kind],
                            100 * found.inside(),
                            found.halfWidth()));
                }
                System.out.printf(
                        Locale.ROOT, "%3.1f time constants, memory %.1f: %.2f %%%s%n", taus, phi, 100 * all, line);
            }
        }
    }
}
