package railwitness.analysis.soak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import railwitness.analysis.uncertainty.Estimate;

/** Drift per hour, and what of it goes with temperature. */
class HoldDriftTest {
    private static final int N = 720;
    private static final double STEP = 20;

    private static double[] times() {
        double[] seconds = new double[N];
        for (int i = 0; i < N; i++) {
            seconds[i] = i * STEP;
        }
        return seconds;
    }

    private static boolean holds(Estimate estimate, double truth) {
        return Math.abs(estimate.value() - truth) <= estimate.coverage(0.95).expanded();
    }

    /** Readings that resemble those before them (coefficient 0.7) scatter a slope far more than as many independent ones. */
    @Test
    void uOfADriftReckonsWithMemory() {
        int inside = 0;
        int cases = 200;
        for (int k = 0; k < cases; k++) {
            SplittableRandom random = new SplittableRandom(100 + k);
            double[] volts = new double[N];
            double noise = 0;
            for (int i = 0; i < N; i++) {
                noise = 0.7 * noise + 0.7 * 0.01 * random.nextGaussian();
                volts[i] = 36 * (1 + 0.0005 * i * STEP / 3600) + noise;
            }
            HoldDrift drift = HoldDrift.of(
                            "voltage", Optional.of("plus"), times(), volts, Optional.empty(), Optional.empty())
                    .orElseThrow();
            inside += holds(drift.perHour(), 0.05 / (1 + 0.0005 * 3)) ? 1 : 0;
        }
        System.out.println("drift within U with memory, seeds 100 to 299: " + inside + " of " + cases);
        assertThat(inside).isBetween(180, 199);
    }

    @Test
    void driftThatIsNoLineCoversTheSlopeAtItsEnd() {
        double[] volts = new double[N];
        SplittableRandom random = new SplittableRandom(8);
        for (int i = 0; i < N; i++) {
            volts[i] = 36 + 0.4 * Math.exp(-i * STEP / 4000) + 0.0005 * random.nextGaussian();
        }
        HoldDrift drift = HoldDrift.of(
                        "voltage", Optional.of("plus"), times(), volts, Optional.empty(), Optional.empty())
                .orElseThrow();
        double atEnd = -100 * 0.4 / 4000 * 3600 * Math.exp(-N * STEP / 4000) / 36;
        assertThat(holds(drift.perHour(), atEnd)).isTrue();
        assertThat(drift.perHour().u()).isGreaterThan(0);
    }

    @Test
    void temperatureIsToldFromAgeing() {
        double[] volts = new double[N];
        double[] celsius = new double[N];
        SplittableRandom random = new SplittableRandom(9);
        for (int i = 0; i < N; i++) {
            double t = i * STEP;
            celsius[i] = 60 - 35 * Math.exp(-t / 1500) + 2 * Math.sin(2 * Math.PI * t / 6000);
            volts[i] = 36 * (1 - 0.0002 * (celsius[i] - 60) - 0.0003 * t / 3600) + 0.002 * random.nextGaussian();
        }
        HoldDrift drift = HoldDrift.of(
                        "voltage", Optional.of("plus"), times(), volts, Optional.of(celsius), Optional.empty())
                .orElseThrow();
        assertThat(drift.byTemperature().orElseThrow().value()).isCloseTo(-0.02, within(0.001));
        assertThat(drift.ageingPerHour().orElseThrow().value()).isCloseTo(-0.03, within(0.002));
    }

    @Test
    void spikesAreCountedOnce() {
        double[] mean = new double[100];
        double[] low = new double[100];
        double[] high = new double[100];
        for (int i = 0; i < 100; i++) {
            mean[i] = 36;
            low[i] = 35.99;
            high[i] = 36.01;
        }
        low[40] = 30;
        low[41] = 31;
        high[70] = 40;
        assertThat(Excursions.count(low, mean, high, 0.18)).isEqualTo(2);
    }
}
