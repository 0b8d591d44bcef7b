package railwitness.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What must hold for any estimates; seeded, the seed is printed where something fails. */
class PropagationProperties {
    private static final long SEED = 4_711;
    private final SplittableRandom random = new SplittableRandom(SEED);

    private Estimate any(String name) {
        double value = 1 + 50 * random.nextDouble();
        Shape shape = Shape.values()[random.nextInt(Shape.values().length)];
        double dof = shape == Shape.STUDENT ? 3 + random.nextInt(30) : Double.POSITIVE_INFINITY;
        return Estimate.of(
                value,
                new Influence(name, shape, value * 0.01 * random.nextDouble(), "V", dof).times(1),
                Influence.rectangular(name + " digit", 0.01 * random.nextDouble(), "V")
                        .times(1));
    }

    @Test
    void scalingTheUnitScalesTheUncertainty() {
        for (int trial = 0; trial < 60; trial++) {
            Estimate volts = any("a").times(any("b")).over(any("c"));
            double factor = Math.pow(10, random.nextInt(13) - 6);
            Estimate scaled = volts.scale(factor);
            assertThat(scaled.u())
                    .as("seed %d, trial %d", SEED, trial)
                    .isCloseTo(volts.u() * factor, withinPercentage(1e-9));
            assertThat(scaled.coverage(0.95).k()).isCloseTo(volts.coverage(0.95).k(), within(1e-9));
        }
    }

    @Test
    void uncertaintyNeverShrinksWhenAnIndependentInputsGrows() {
        for (int trial = 0; trial < 60; trial++) {
            Estimate a = any("a");
            Estimate b = any("b");
            Estimate wider =
                    a.with(Influence.normal("more", random.nextDouble(), "V").times(1));
            assertThat(wider.over(b).u())
                    .as("seed %d, trial %d", SEED, trial)
                    .isGreaterThanOrEqualTo(a.over(b).u());
            assertThat(wider.times(b).u()).isGreaterThanOrEqualTo(a.times(b).u());
            assertThat(wider.minus(b).coverage(0.95).expanded())
                    .isGreaterThanOrEqualTo(a.minus(b).coverage(0.95).expanded() * (1 - 0.05));
        }
    }

    @Test
    void orderOfReadingsAndPointsDoesNotMatter() {
        for (int trial = 0; trial < 20; trial++) {
            List<StraightLine.Point> points = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                Estimate x = any("x").plus(10 * i);
                points.add(new StraightLine.Point(x, x.scale(3).plus(any("y"))));
            }
            StraightLine before = StraightLine.fit(points);
            Collections.shuffle(points, new Random(SEED + trial));
            StraightLine after = StraightLine.fit(points);
            assertThat(after.slope().value())
                    .as("seed %d, trial %d", SEED, trial)
                    .isCloseTo(before.slope().value(), withinPercentage(1e-9));
            assertThat(after.slope().u()).isCloseTo(before.slope().u(), withinPercentage(1e-6));
        }
    }

    @Test
    void linearPropagationAgreesWithMonteCarloWhereTheModelIsMildlyBent() {
        for (int trial = 0; trial < 4; trial++) {
            Estimate shared = any("shared");
            Estimate a = any("a").plus(shared.scale(0.3));
            Estimate b = any("b").plus(shared.scale(0.2));
            Estimate c = any("c").plus(20);
            Outcomes outcomes = new MonteCarlo(SEED + trial, 10_000).run(List.of(a, b, c), x -> x[0] * x[1] / x[2]);
            double inflated = inflatedU(a.times(b).over(c));
            assertThat(outcomes.u()).as("seed %d, trial %d", SEED, trial).isCloseTo(inflated, withinPercentage(4));
        }
    }

    /** Supplement 1 draws a Student influence with nu / (nu - 2) of its variance. */
    private static double inflatedU(Estimate estimate) {
        return Math.sqrt(estimate.contributions().stream()
                .mapToDouble(part -> part.u()
                        * part.u()
                        * (part.shape() == Shape.STUDENT ? part.degreesOfFreedom() / (part.degreesOfFreedom() - 2) : 1))
                .sum());
    }

    /** The short form of {@link MixtureCoverage}: 400 trials scatter by 1.1 % (one standard deviation). */
    @Test
    void statedIntervalsHoldTheTruthNearNinetyFiveTimesInAHundred() {
        MixtureCoverage coverage = new MixtureCoverage(SEED);
        for (double[] mixture : MixtureCoverage.mixtures()) {
            assertThat(coverage.share(mixture, 400)).as("seed %d", SEED).isBetween(0.91, 0.99);
        }
    }
}
