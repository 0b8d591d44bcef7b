package railwitness.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Monte Carlo against published examples. */
class MonteCarloTest {
    private final MonteCarlo monteCarlo = new MonteCarlo(20_240_511, 200_000);

    private static List<Estimate> four(Shape shape) {
        return IntStream.range(0, 4)
                .mapToObj(i -> Estimate.of(0, new Influence("X" + i, shape, 1, "1", Double.POSITIVE_INFINITY).times(1)))
                .toList();
    }

    private static double sum(double[] x) {
        return Arrays.stream(x).sum();
    }

    /** JCGM 101, 9.2.2, as printed in a public copy. */
    @Test
    void sumOfFourNormals() {
        Outcomes outcomes = monteCarlo.run(four(Shape.NORMAL), MonteCarloTest::sum);
        assertThat(outcomes.u()).isCloseTo(2.0, within(0.02));
        assertThat(outcomes.symmetric(0.95).halfWidth()).isCloseTo(3.92, within(0.04));
    }

    /** JCGM 101, 9.2.3, as printed in a public copy. */
    @Test
    void sumOfFourRectangles() {
        Outcomes outcomes = monteCarlo.run(four(Shape.RECTANGULAR), MonteCarloTest::sum);
        assertThat(outcomes.u()).isCloseTo(2.0, within(0.02));
        assertThat(outcomes.shortest(0.95).halfWidth()).isCloseTo(3.88, within(0.04));
    }

    /** NIST TN 1900, example E13 (thermal expansion), with normal inputs, as printed in a public copy. */
    @Test
    void thermalExpansionCoefficient() {
        Estimate l0 = Estimate.of(1.4999, Influence.normal("L0", 0.0001, "m").times(1));
        Estimate l1 = Estimate.of(1.5021, Influence.normal("L1", 0.0002, "m").times(1));
        Estimate t0 = Estimate.of(288.15, Influence.normal("T0", 0.02, "K").times(1));
        Estimate t1 = Estimate.of(373.10, Influence.normal("T1", 0.05, "K").times(1));
        Estimate linear = l1.minus(l0).over(l0.times(t1.minus(t0)));
        Outcomes outcomes = monteCarlo.run(List.of(l0, l1, t0, t1), x -> (x[1] - x[0]) / (x[0] * (x[3] - x[2])));
        assertThat(linear.value()).isCloseTo(1.7266e-5, within(5e-10));
        assertThat(linear.u()).isCloseTo(1.76e-6, within(5e-9));
        assertThat(outcomes.u()).isCloseTo(1.76e-6, within(2e-8));
        assertThat(outcomes.mean()).isCloseTo(1.7266e-5, within(2e-8));
    }

    /** Variance of a Student variable: nu / (nu - 2), JCGM 101, 6.4.9.4. */
    @Test
    void studentInfluenceIsDrawnWiderThanItsScatter() {
        Estimate few =
                Estimate.of(0, Influence.student("few readings", 1, "V", 10).times(1));
        assertThat(monteCarlo.run(List.of(few), x -> x[0]).u()).isCloseTo(Math.sqrt(10 / 8.0), within(0.02));
    }

    @Test
    void sharedInfluenceIsDrawnOnce() {
        Influence gain = Influence.rectangular("gain", 0.01, "1");
        Estimate a = Estimate.of(30, gain.times(30));
        Estimate b = Estimate.of(10, gain.times(10));
        Outcomes ratio = monteCarlo.run(List.of(a, b), x -> x[0] / x[1]);
        assertThat(ratio.u()).isLessThan(1e-12);
    }

    /** A square of something near zero is no longer symmetric: the shortest interval starts at zero. */
    @Test
    void bentModelShowsItself() {
        Estimate current = Estimate.of(0.1, Influence.normal("noise", 1, "A").times(1));
        Outcomes power = monteCarlo.run(List.of(current), x -> x[0] * x[0]);
        assertThat(current.times(current).u()).isCloseTo(0.2, within(1e-12));
        assertThat(power.u()).isGreaterThan(1.3);
        assertThat(power.shortest(0.95).low()).isLessThan(1e-3);
        assertThat(power.symmetric(0.95).low())
                .isGreaterThan(power.shortest(0.95).low());
        assertThat(power.share(power.shortest(0.95))).isCloseTo(0.95, within(1e-4));
        assertThat(Collections.max(List.of(power.count()))).isEqualTo(200_000);
    }

    @Test
    void sameSeedSameAnswer() {
        List<Estimate> inputs = four(Shape.U_SHAPED);
        assertThat(monteCarlo.run(inputs, MonteCarloTest::sum).u())
                .isEqualTo(monteCarlo.run(inputs, MonteCarloTest::sum).u());
    }
}
