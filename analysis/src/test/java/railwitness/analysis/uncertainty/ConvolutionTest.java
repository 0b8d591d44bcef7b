package railwitness.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

/**
 * Coverage of sums of unlike shapes. Reference half-widths at 95 % are Monte Carlo results of 20 million trials each
 * (numpy's default_rng, seed 7: uniform, standard_t and normal, after JCGM 101), good to 0.002.
 */
class ConvolutionTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private static Contribution rectangle(double u) {
        return new Contribution("rectangle", Shape.RECTANGULAR, u, INFINITE);
    }

    private static Contribution student(double u, double dof) {
        return new Contribution("scatter", Shape.STUDENT, u, dof);
    }

    private static Contribution normal(double u) {
        return new Contribution("certificate", Shape.NORMAL, u, INFINITE);
    }

    private static double u95(Contribution... parts) {
        return new Convolution(List.of(parts)).halfWidth(0.95);
    }

    @Test
    void rectangleAndAStudentOfTwoDegreesOfFreedom() {
        assertThat(u95(rectangle(1), student(0.4, 2))).isCloseTo(2.380, within(0.01));
    }

    @Test
    void anInfluenceMoreNeverMakesTheIntervalNarrower() {
        assertThat(u95(rectangle(1), student(0.4, 2), normal(0.4))).isCloseTo(2.545, within(0.01));
    }

    @Test
    void eachStudentPartKeepsItsOwnTails() {
        assertThat(u95(rectangle(1), student(0.5, 3), student(0.5, 5))).isCloseTo(2.722, within(0.01));
    }

    /** A Student part alone is Student's own table: t of 95 % (tables of the t distribution, such as GUM G.2). */
    @Test
    void aStudentPartAloneIsTheTable() {
        assertThat(u95(student(1, 3))).isCloseTo(3.18, within(0.02));
        assertThat(u95(student(1, 10))).isCloseTo(2.23, within(0.01));
    }

    /** Law: adding an independent influence never lowers U, whatever the shapes. */
    @Test
    void moreDoubtIsNeverLess() {
        long seed = 20_261;
        SplittableRandom random = new SplittableRandom(seed);
        for (int run = 0; run < 60; run++) {
            List<Contribution> parts = new ArrayList<>(List.of(drawn(random), drawn(random)));
            double before = new Convolution(parts).halfWidth(0.95);
            parts.add(drawn(random));
            assertThat(new Convolution(parts).halfWidth(0.95))
                    .as("seed %d run %d %s", seed, run, parts)
                    .isGreaterThan(before * (1 - 2e-3));
        }
    }

    private static Contribution drawn(SplittableRandom random) {
        double u = 0.05 + random.nextDouble();
        return switch (random.nextInt(3)) {
            case 0 -> rectangle(u);
            case 1 -> student(u, 2 + random.nextInt(30));
            default -> normal(u);
        };
    }

    /** The distribution of a rectangle and a t, worked out by an integral of its own: the mean of t's over the rectangle. */
    @Test
    void probabilitiesAreThoseOfTheIntegral() {
        TDistribution t = new TDistribution(4);
        Convolution sum = new Convolution(List.of(rectangle(1), student(0.5, 4)));
        for (double x = -3; x <= 3; x += 0.25) {
            double mean = 0;
            int nodes = 4000;
            for (int i = 0; i < nodes; i++) {
                double shift = Math.sqrt(3) * (2 * (i + 0.5) / nodes - 1);
                mean += t.cumulativeProbability((x - shift) / 0.5) / nodes;
            }
            assertThat(sum.below(x)).isCloseTo(mean, within(2e-3));
        }
    }
}
