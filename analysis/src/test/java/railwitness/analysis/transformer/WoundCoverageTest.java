package railwitness.analysis.transformer;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/** How often the stated interval at 95 % holds the truth, with errors drawn as they are stated. */
@Execution(ExecutionMode.CONCURRENT)
class WoundCoverageTest {
    private static final int RUNS = 4000;

    /** A meter of one range: its gain error is the same in every reading, its noise is not. */
    private static final class Meter {
        private final Random random;
        private final double noise;
        private final double gain;
        private final Influence gains;

        Meter(Random random, double gainLimit, double noise) {
            this.random = random;
            this.noise = noise;
            this.gain = gainLimit * (2 * random.nextDouble() - 1);
            this.gains = Influence.rectangular("gain", gainLimit, "1");
        }

        Estimate read(double truth) {
            double read = truth * (1 + gain) + noise * random.nextGaussian();
            return Estimate.of(
                    read,
                    gains.times(read),
                    Influence.normal("noise", noise, "1").times(1));
        }
    }

    private static void holds(String name, long seed, double truth, Function<Random, Estimate> measured) {
        Random random = new Random(seed);
        int inside = 0;
        for (int i = 0; i < RUNS; i++) {
            Estimate estimate = measured.apply(random);
            inside += Math.abs(estimate.value() - truth)
                            <= estimate.coverage(0.95).expanded()
                    ? 1
                    : 0;
        }
        System.out.printf(java.util.Locale.ROOT, "%s: seed %d, %.1f %%%n", name, seed, 100.0 * inside / RUNS);
        assertThat(100.0 * inside / RUNS).as(name + ", seed " + seed).isBetween(94.0, 97.0);
    }

    @Test
    void windingResistanceByFourWires() {
        holds("resistance at 20 degC", 71, 2e-3, random -> {
            Meter volts = new Meter(random, 0.002, 8e-6);
            Meter amperes = new Meter(random, 0.003, 2e-3);
            Meter degrees = new Meter(random, 0, 0.5);
            double ohms = 2e-3 * Copper.factor(24);
            double thermal = 40e-6 * random.nextGaussian();
            return FourWire.at20(
                    FourWire.ohms(
                            volts.read(5 * ohms + thermal),
                            amperes.read(5),
                            volts.read(-5 * ohms + thermal),
                            amperes.read(-5)),
                    degrees.read(24));
        });
    }

    @Test
    void turnsRatioMatchAndProbeTurn() {
        holds(
                "turns ratio",
                72,
                3,
                random -> Ratio.of(new Meter(random, 0.005, 4e-3).read(3.9), new Meter(random, 0.005, 2e-3).read(1.3)));
        holds("match of halves", 73, 0, random -> {
            Meter one = new Meter(random, 0.005, 3e-3);
            return Ratio.mismatch(one.read(3.9), one.read(3.9));
        });
        holds(
                "turns by a probe turn",
                74,
                12,
                random -> Ratio.turns(
                        new Meter(random, 0.005, 3e-3).read(3.9), new Meter(random, 0.005, 1e-3).read(0.325)));
    }

    @Test
    void inductances() {
        double reactance = 2 * Math.PI * 25e3 * 80e-6;
        holds(
                "inductance from a sine",
                75,
                80e-6,
                random -> Inductance.sine(
                        new Meter(random, 0.01, 5e-3).read(reactance * 0.2),
                        new Meter(random, 0.01, 1e-3).read(0.2),
                        new Meter(random, 1e-4, 1).read(25e3),
                        new Meter(random, 0, 1e-3).read(0.004)));
        double ring = 1 / (2 * Math.PI * Math.sqrt(80e-6 * 1e-6));
        holds(
                "inductance from ringing",
                76,
                80e-6,
                random -> Inductance.ringing(
                        new Meter(random, 1e-3, 100).read(ring), new Meter(random, 0.02, 0).read(1e-6)));
        double leak = Math.hypot(2 * Math.PI * 25e3 * 0.08e-6, 0.006);
        holds(
                "leakage",
                77,
                0.08e-6,
                random -> Inductance.sine(
                        new Meter(random, 0.01, 1e-4).read(2 * leak),
                        new Meter(random, 0.01, 5e-3).read(2),
                        new Meter(random, 1e-4, 1).read(25e3),
                        new Meter(random, 0.02, 1e-4).read(0.006)));
    }

    @Test
    void hotResistanceAndTemperature() {
        double hot = 28e-3 * Copper.factor(80) / Copper.factor(24);
        Function<Random, Estimate[]> measured = random -> {
            Meter meter = new Meter(random, 0.003, 2.5e-5);
            Estimate cold = meter.read(28e-3);
            List<SwitchOff.Reading> readings = new ArrayList<>();
            for (int seconds = 20; seconds <= 160; seconds += 20) {
                readings.add(
                        new SwitchOff.Reading(seconds, meter.read(28e-3 + (hot - 28e-3) * Math.exp(-seconds / 300.0))));
            }
            Estimate off = SwitchOff.ohms(cold, readings);
            return new Estimate[] {off, SwitchOff.degC(cold, new Meter(random, 0, 0.5).read(24), off)};
        };
        holds("hot resistance", 78, hot, random -> measured.apply(random)[0]);
        holds("winding temperature", 79, 80, random -> measured.apply(random)[1]);
    }

    @Test
    void knee() {
        long seed = 80;
        Random random = new Random(seed);
        int inside = 0;
        int missed = 0;
        int runs = 1200;
        for (int i = 0; i < runs; i++) {
            double truth = 18 + 2 * random.nextDouble();
            List<Knee.Point> points = new ArrayList<>();
            for (double volts = 8; volts <= 22; volts += 0.5) {
                double amperes = 0.24 + 0.008 * volts + 0.15 * Math.max(0, volts - truth);
                points.add(new Knee.Point(volts, amperes + 6e-3 * random.nextGaussian()));
            }
            Optional<Knee> knee = Knee.find(points);
            missed += knee.isEmpty() ? 1 : 0;
            inside += knee.filter(k -> k.lowest() <= truth && truth <= k.highest())
                            .isPresent()
                    ? 1
                    : 0;
        }
        System.out.printf(java.util.Locale.ROOT, "knee: seed %d, %.1f %%%n", seed, 100.0 * inside / runs);
        assertThat(missed).as("seed " + seed).isZero();
        assertThat(100.0 * inside / runs).as("seed " + seed).isBetween(94.0, 97.0);
    }

    /** A straight course is said to have a knee in at most one of two hundred. */
    @Test
    void noKneeIsSeenWhereThereIsNone() {
        long seed = 81;
        Random random = new Random(seed);
        int seen = 0;
        for (int i = 0; i < 1200; i++) {
            List<Knee.Point> points = new ArrayList<>();
            for (double volts = 8; volts <= 22; volts += 0.5) {
                points.add(new Knee.Point(volts, 0.24 + 0.008 * volts + 6e-3 * random.nextGaussian()));
            }
            seen += Knee.find(points).isPresent() ? 1 : 0;
        }
        System.out.printf(java.util.Locale.ROOT, "false knees: seed %d, %d of 1200%n", seed, seen);
        assertThat(seen).as("seed " + seed).isLessThanOrEqualTo(6);
    }
}
