package railwitness.analysis.soak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import railwitness.analysis.uncertainty.Estimate;

/** The exponential way to the final temperature. */
class ThermalFitTest {
    private static final double TAU = 1200;

    private static double[] times(int n, double step) {
        double[] seconds = new double[n];
        for (int i = 0; i < n; i++) {
            seconds[i] = 500 + i * step;
        }
        return seconds;
    }

    private static double[] warming(double[] seconds, double sigma, SplittableRandom random) {
        double[] celsius = new double[seconds.length];
        for (int i = 0; i < seconds.length; i++) {
            celsius[i] = 65 - 40 * Math.exp(-(seconds[i] - 500) / TAU) + sigma * random.nextGaussian();
        }
        return celsius;
    }

    /** First order: 63.21 % at tau, 86.47 %, 95.02 %, 98.17 %, 99.33 % at 2 to 5 tau (textbook values). */
    @Test
    void noiselessWarmingIsFoundExactly() {
        double[] seconds = times(200, 15);
        ThermalFit fit = ThermalFit.of(seconds, warming(seconds, 0, new SplittableRandom(1)))
                .orElseThrow();
        assertThat(fit.timeConstantSeconds().value()).isCloseTo(TAU, within(0.01));
        assertThat(fit.start().value()).isCloseTo(25, within(1e-4));
        assertThat(fit.end().value()).isCloseTo(65, within(1e-4));
        double[] reached = {0.6321, 0.8647, 0.9502, 0.9817, 0.9933};
        for (int k = 1; k <= 5; k++) {
            double part = (fit.at(k * TAU).value() - 25) / 40;
            assertThat(part).isCloseTo(reached[k - 1], within(5e-5));
        }
        assertThat(fit.secondsUntilLeft(0.5).value() / TAU).isCloseTo(0.693, within(5e-4));
    }

    @Test
    void statedUncertaintyHoldsTheTruth() {
        long seed = 99;
        SplittableRandom random = new SplittableRandom(seed);
        double[] seconds = times(120, 20);
        int runs = 400;
        int end = 0;
        int tau = 0;
        for (int run = 0; run < runs; run++) {
            ThermalFit fit =
                    ThermalFit.of(seconds, warming(seconds, 0.3, random)).orElseThrow();
            end += within95(fit.end(), 65) ? 1 : 0;
            tau += within95(fit.timeConstantSeconds(), TAU) ? 1 : 0;
        }
        System.out.printf(
                Locale.ROOT,
                "thermal fit over 2 tau, seed %d: final value within U %.1f %%, time constant %.1f %%%n",
                seed,
                100.0 * end / runs,
                100.0 * tau / runs);
        assertThat(end / (double) runs).isBetween(0.92, 0.985);
        assertThat(tau / (double) runs).isBetween(0.92, 0.985);
    }

    private static boolean within95(Estimate estimate, double truth) {
        return Math.abs(estimate.value() - truth) <= estimate.coverage(0.95).expanded();
    }

    @Test
    void recordThatCannotTellGivesNoCurve() {
        double[] seconds = times(100, 2);
        assertThat(ThermalFit.of(seconds, warming(seconds, 0.5, new SplittableRandom(2))))
                .isEmpty();
        assertThat(ThermalFit.of(seconds, new double[100])).isEmpty();
        assertThat(ThermalFit.of(times(4, 600), new double[] {1, 2, 3, 4})).isEmpty();
    }

    @Test
    void coolingIsFittedAsWell() {
        double[] seconds = times(200, 15);
        double[] celsius = warming(seconds, 0.05, new SplittableRandom(3));
        for (int i = 0; i < celsius.length; i++) {
            celsius[i] = 90 - celsius[i];
        }
        ThermalFit fit = ThermalFit.of(seconds, celsius).orElseThrow();
        assertThat(fit.end().value()).isCloseTo(25, within(0.2));
        assertThat(fit.leftAt(0).value()).isCloseTo(-40, within(0.2));
    }
}
