package railwitness.analysis.steady;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** False alarms and misses of the settling rule, at ten readings a second over a window of five seconds. */
class SettlingProperties {
    private static final long SEED = 271_828;
    private static final SettlingRule RULE = new SettlingRule(5, 8, 0);
    private final SplittableRandom random = new SplittableRandom(SEED);

    /** Share of runs whose last reading, after the given time, finds the step settled. */
    private double settled(double seconds, double r, double driftPerWindow, boolean ever) {
        int runs = 1000;
        int count = 0;
        for (int run = 0; run < runs; run++) {
            Settling settling = new Settling(RULE);
            double[] noise = AverageProperties.noise(random, (int) (seconds * 10), r);
            for (int i = 0; i < noise.length; i++) {
                settling.add(i / 10.0, 35 + noise[i] + driftPerWindow * i / 50.0);
            }
            count += (ever ? settling.secondsToSettle().isPresent() : settling.settled()) ? 1 : 0;
        }
        return count / (double) runs;
    }

    private static double say(String what, double share) {
        System.out.printf(Locale.ROOT, "settling, seed %d: %s: %.1f %%%n", SEED, what, 100 * share);
        return share;
    }

    @Test
    void noiseAtRestIsRarelyTakenForADrift() {
        assertThat(say("white noise at rest not settled, one look", 1 - settled(5.1, 0, 0, false)))
                .isBetween(0.02, 0.14);
        assertThat(say("correlated noise (0.7) at rest not settled, one look", 1 - settled(5.1, 0.7, 0, false)))
                .isLessThan(0.25);
        assertThat(say("white noise at rest never settled within 10 s", 1 - settled(10, 0, 0, true)))
                .isLessThan(0.02);
    }

    @Test
    void driftThatStandsOutOfTheNoiseIsNotMissed() {
        assertThat(say("drift of 1 sigma a window taken for rest, one look", settled(5.1, 0, 1, false)))
                .isLessThan(0.7);
        assertThat(say("drift of 2 sigma a window taken for rest, one look", settled(5.1, 0, 2, false)))
                .isLessThan(0.1);
        assertThat(say("drift of 4 sigma a window ever taken for rest in 30 s", settled(30, 0, 4, true)))
                .isLessThan(0.01);
    }

    /**
     * Rails approach exponentially; what is left when the rule is met drowns in the noise, as long as the window is not
     * shorter than the time constant. An approach of twice the window's length leaves some two sigma.
     */
    @Test
    void noisyApproachIsCalledSettledOnlyWhenLittleIsLeft() {
        for (double tau : new double[] {1, 3, 10}) {
            double[] left = new double[400];
            for (int run = 0; run < left.length; run++) {
                left[run] = leftWhenSettled(tau, 20) / 20;
            }
            Arrays.sort(left);
            System.out.printf(
                    Locale.ROOT,
                    "settling, seed %d: way of 20 sigma, time constant %.0f s, window 5 s: left when settled, median"
                            + " %.2f, 95 %% below %.2f sigma%n",
                    SEED,
                    tau,
                    20 * left[200],
                    20 * left[380]);
            assertThat(20 * left[380]).isLessThan(tau < 5 ? 1.0 : 4.0);
        }
    }

    private double leftWhenSettled(double tau, double way) {
        Settling settling = new Settling(RULE);
        int i = 0;
        while (settling.secondsToSettle().isEmpty() && i < 5000) {
            settling.add(i / 10.0, 35 - way * Math.exp(-i / 10.0 / tau) + random.nextGaussian());
            i++;
        }
        return way * Math.exp(-(i - 1) / 10.0 / tau);
    }

    @Test
    void orderOfMagnitudeOfTheValueDoesNotMatter() {
        for (int run = 0; run < 50; run++) {
            double[] noise = AverageProperties.noise(random, 80, 0);
            Settling volts = new Settling(RULE);
            Settling millivolts = new Settling(RULE);
            for (int i = 0; i < noise.length; i++) {
                volts.add(i / 10.0, noise[i]);
                millivolts.add(i / 10.0, 1000 * noise[i]);
                assertThat(volts.settled()).isEqualTo(millivolts.settled());
            }
        }
    }
}
