package railwitness.analysis.steady;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Sessions of twelve steps of ten readings: what all steps together tell about how long readings resemble each other. */
class MemoryTest {
    private static final long SEED = 20261128;
    private static final int STEPS = 12;
    private static final int READINGS = 10;

    private record Share(double alone, double together, double widths) {}

    /** Shares of means whose interval held the truth, and how wide these are beside those of each step by itself. */
    private static Share share(double correlation, int sessions) {
        SplittableRandom random = new SplittableRandom(SEED);
        int alone = 0;
        int together = 0;
        double widths = 0;
        for (int session = 0; session < sessions; session++) {
            Memory memory = new Memory();
            List<double[]> steps = new ArrayList<>();
            for (int step = 0; step < STEPS; step++) {
                steps.add(AverageProperties.noise(random, READINGS, correlation));
                memory.learn(seconds(), steps.get(step));
            }
            for (double[] readings : steps) {
                Average by = Average.of("step", "V", seconds(), readings);
                Average with = Average.of("step", "V", seconds(), readings, memory);
                alone += holds(by) ? 1 : 0;
                together += holds(with) ? 1 : 0;
                widths += expanded(with) / expanded(by) / sessions / STEPS;
            }
        }
        double all = (double) sessions * STEPS;
        System.out.printf(
                Locale.ROOT,
                "mean of ten, seed %d, correlation %.1f: truth within U by itself %.1f %%, with the others %.1f %%, width %.2f%n",
                SEED,
                correlation,
                100 * alone / all,
                100 * together / all,
                widths);
        return new Share(alone / all, together / all, widths);
    }

    private static double[] seconds() {
        double[] seconds = new double[READINGS];
        for (int i = 0; i < READINGS; i++) {
            seconds[i] = i / 2.0;
        }
        return seconds;
    }

    private static boolean holds(Average average) {
        return Math.abs(average.mean().value()) <= expanded(average);
    }

    private static double expanded(Average average) {
        return average.mean().coverage(0.95).expanded();
    }

    @Test
    void independentReadingsAreNoLongerTakenForOnesThatResembleEachOther() {
        Share share = share(0, 250);
        assertThat(share.together()).isBetween(0.94, 0.97);
        assertThat(share.widths()).isLessThan(1);
    }

    @Test
    void readingsThatDoResembleEachOtherAreToldBetterTogether() {
        for (double correlation : new double[] {0.3, 0.5}) {
            Share share = share(correlation, 250);
            assertThat(share.together()).isGreaterThan(0.93).isGreaterThan(share.alone());
        }
        Share strong = share(0.7, 250);
        assertThat(strong.together()).isGreaterThan(0.89).isGreaterThan(strong.alone() + 0.03);
    }

    @Test
    void aStepThatWandersWhileTheOthersDoNotIsJudgedByItself() {
        SplittableRandom random = new SplittableRandom(SEED);
        Memory memory = new Memory();
        for (int step = 0; step < STEPS; step++) {
            memory.learn(seconds(), AverageProperties.noise(random, READINGS, 0));
        }
        double[] wave = new double[READINGS];
        for (int i = 0; i < READINGS; i++) {
            wave[i] = Math.sin(2 * Math.PI * i / READINGS);
        }
        Average by = Average.of("step", "V", seconds(), wave);
        Average with = Average.of("step", "V", seconds(), wave, memory);
        assertThat(with.mean().u()).isEqualTo(by.mean().u());
    }

    @Test
    void twoStretchesAreTooFewToLearnFrom() {
        SplittableRandom random = new SplittableRandom(SEED);
        Memory memory = new Memory();
        double[] readings = AverageProperties.noise(random, READINGS, 0);
        memory.learn(seconds(), AverageProperties.noise(random, READINGS, 0));
        memory.learn(seconds(), readings);
        assertThat(Average.of("step", "V", seconds(), readings, memory).mean().u())
                .isEqualTo(Average.of("step", "V", seconds(), readings).mean().u());
    }
}
