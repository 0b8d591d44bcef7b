package railwitness.analysis.steady;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** How often the stated 95 % interval of an average holds the truth, over autocorrelated noise. */
class AverageProperties {
    private static final long SEED = 31_337;

    /** First-order autoregressive noise about zero, standard deviation 1. */
    static double[] noise(SplittableRandom random, int n, double r) {
        double[] x = new double[n];
        double last = random.nextGaussian();
        for (int i = 0; i < n; i++) {
            last = r * last + Math.sqrt(1 - r * r) * random.nextGaussian();
            x[i] = last;
        }
        return x;
    }

    private static double coverage(int n, double r, int trials) {
        SplittableRandom random = new SplittableRandom(SEED);
        int inside = 0;
        int drifts = 0;
        for (int trial = 0; trial < trials; trial++) {
            Average average = Average.of("noise", "V", noise(random, n, r));
            inside += Math.abs(average.mean().value())
                            <= average.mean().coverage(0.95).expanded()
                    ? 1
                    : 0;
            drifts += average.drift().distinguishable() ? 1 : 0;
        }
        System.out.printf(
                Locale.ROOT,
                "average, seed %d: n %7d, lag-1 correlation %.1f: %.1f %% within U, %.1f %% falsely said to drift%n",
                SEED,
                n,
                r,
                100.0 * inside / trials,
                100.0 * drifts / trials);
        return inside / (double) trials;
    }

    @Test
    void independentReadingsKeepTheirPromise() {
        for (int n : new int[] {3, 5, 10, 30, 100, 1000}) {
            assertThat(coverage(n, 0, 600)).isBetween(0.92, 1.0);
        }
    }

    @Test
    void correlatedReadingsKeepTheirPromiseOnceThereAreEnough() {
        assertThat(coverage(30, 0.5, 1000)).isBetween(0.90, 0.98);
        assertThat(coverage(100, 0.5, 1000)).isBetween(0.925, 0.98);
        assertThat(coverage(100, 0.9, 1000)).isBetween(0.85, 0.98);
        assertThat(coverage(1000, 0.9, 300)).isBetween(0.93, 0.98);
        assertThat(coverage(10_000, 0.9, 100)).isBetween(0.89, 0.99);
    }

    @Test
    void aMillionReadingsAreAveragedAsSafely() {
        assertThat(coverage(1_000_000, 0.9, 4)).isGreaterThan(0.75);
    }

    @Test
    void orderOfReadingsDoesNotMoveTheMean() {
        SplittableRandom random = new SplittableRandom(SEED);
        double[] readings = noise(random, 500, 0.3);
        double[] backwards = new double[500];
        for (int i = 0; i < 500; i++) {
            backwards[i] = readings[499 - i];
        }
        Average forth = Average.of("a", "V", readings);
        Average back = Average.of("a", "V", backwards);
        assertThat(Math.abs(forth.mean().value() - back.mean().value())).isLessThan(1e-14);
        assertThat(Math.abs(forth.mean().u() / back.mean().u() - 1)).isLessThan(1e-9);
    }
}
