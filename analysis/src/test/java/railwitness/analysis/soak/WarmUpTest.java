package railwitness.analysis.soak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import railwitness.analysis.uncertainty.Estimate;

/** The way to the final temperature of one and of two bodies, against truths worked out elsewhere. */
class WarmUpTest {
    private static double[] times(int n, double step) {
        double[] seconds = new double[n];
        for (int i = 0; i < n; i++) {
            seconds[i] = i * step;
        }
        return seconds;
    }

    private static double u95(Estimate estimate) {
        return estimate.coverage(0.95).expanded();
    }

    /** Short form of {@link WarmUpCampaign}, which makes the table of the README with 10 000 cases each. */
    @Test
    void bandHoldsTheTruthFromOneAndAHalfTimeConstants() {
        int cases = 60;
        double inside = 0;
        for (int kind = 0; kind < 5; kind++) {
            inside += WarmUpCampaign.run(7, cases, 1.5, 300, 0.1, 0.3, kind).inside() / 5;
        }
        System.out.printf(
                Locale.ROOT,
                "final temperature within U from 1.5 time constants, seed 7, %d cases: %.1f %%%n",
                5 * cases,
                100 * inside);
        assertThat(inside).isBetween(0.91, 0.99);
    }

    /** First order, textbook: 63.2 % after one time constant; 40 K and 20 min, known to a hundredth without scatter. */
    @Test
    void oneBodyWithoutScatterIsFoundExactly() {
        double[] seconds = times(240, 15);
        double[] celsius = new double[240];
        for (int i = 0; i < 240; i++) {
            celsius[i] = 65 - 40 * Math.exp(-seconds[i] / 1200);
        }
        WarmUp fit = WarmUp.of(seconds, celsius).orElseThrow();
        assertThat(fit.finalCelsius().value()).isCloseTo(65, within(0.05));
        assertThat(u95(fit.finalCelsius())).isLessThan(0.2);
        assertThat(fit.timeConstantSeconds().value()).isCloseTo(1200, within(10.0));
        assertThat(fit.secondsUntil(1).value()).isCloseTo(1200 * Math.log(40), within(30.0));
        assertThat(fit.at(1200).value()).isCloseTo(65 - 40 / Math.E, within(0.02));
    }

    /** The room rises by 4 K half-way: without its channel the body would seem to go on warming. */
    @Test
    void roomIsTakenOffAsTheBodyFollowsIt() {
        int n = 360;
        double[] seconds = times(n, 20);
        double[] room = new double[n];
        double[] celsius = new double[n];
        double rise = 0;
        double followed = 20;
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < n; i++) {
            room[i] = 20 + (i > n / 2 ? 4 : 0);
            if (i > 0) {
                rise += (30 - rise) * -Math.expm1(-20 / 1000.0);
                followed += (room[i] - followed) * -Math.expm1(-20 / 1000.0);
            }
            celsius[i] = followed + rise + 0.05 * random.nextGaussian();
        }
        WarmUp fit = WarmUp.of(seconds, celsius, Optional.of(room)).orElseThrow();
        assertThat(fit.finalAboveAmbient().value()).isCloseTo(30, within(Math.max(0.15, u95(fit.finalAboveAmbient()))));
        assertThat(fit.finalCelsius().value()).isCloseTo(54, within(0.3));
    }

    @Test
    void twoStretchesWithABreakTendToTheSame() {
        int n = 300;
        double[] seconds = times(n, 20);
        double[] celsius = new double[n];
        SplittableRandom random = new SplittableRandom(4);
        double t = 20;
        for (int i = 0; i < n; i++) {
            if (i == 150) {
                t = 30;
            }
            celsius[i] = t + 0.05 * random.nextGaussian();
            t += (60 - t) * -Math.expm1(-20 / 1200.0);
        }
        WarmUp fit = WarmUp.of(seconds, celsius, Optional.empty(), seconds[150]).orElseThrow();
        assertThat(fit.finalCelsius().value()).isCloseTo(60, within(u95(fit.finalCelsius()) + 0.05));
        assertThat(u95(fit.finalCelsius())).isLessThan(0.6);
    }

    @Test
    void shortRecordSaysHowLittleItKnows() {
        double[] seconds = times(60, 5);
        double[] celsius = new double[60];
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < 60; i++) {
            celsius[i] = 60 - 40 * Math.exp(-seconds[i] / 1200) + 0.1 * random.nextGaussian();
        }
        WarmUp early = WarmUp.of(seconds, celsius).orElseThrow();
        assertThat(u95(early.finalCelsius())).isGreaterThan(3);
        assertThat(early.knownWithin(0.5).orElseThrow()).isGreaterThan(300.0);
        double[] first = java.util.Arrays.copyOf(seconds, 14);
        double[] moments = java.util.Arrays.copyOf(celsius, 14);
        for (int i = 0; i < 14; i++) {
            moments[i] = 60 - 40 * Math.exp(-seconds[i] / 1200) + 0.01 * random.nextGaussian();
        }
        assertThat(WarmUp.of(first, moments).orElseThrow().tooShort()).isTrue();
        assertThat(WarmUp.of(new double[] {0, 1}, new double[] {20, 21})).isEmpty();
    }
}
