package railwitness.analysis.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/** Weighted least squares against the examples of ISO/TS 28037:2010, clause 6 (data and results from memory, recomputed). */
class WeightedLineTest {
    private static Regression line(double[] y, double[] u) {
        List<Estimate> xs = new ArrayList<>();
        List<Estimate> ys = new ArrayList<>();
        for (int i = 0; i < y.length; i++) {
            xs.add(Estimate.exact(i + 1.0));
            ys.add(Estimate.of(y[i], Influence.normal("y" + i, u[i], "1").times(1)));
        }
        return Regression.weighted(List.of(Regression.ones(y.length), xs), ys);
    }

    private static void is(Regression fit, double a, double uA, double b, double uB) {
        assertThat(fit.coefficients().get(0).value()).isCloseTo(a, within(1e-3));
        assertThat(fit.coefficients().get(0).u()).isCloseTo(uA, within(1e-3));
        assertThat(fit.coefficients().get(1).value()).isCloseTo(b, within(1e-3));
        assertThat(fit.coefficients().get(1).u()).isCloseTo(uB, within(1e-3));
    }

    @Test
    void equalWeights() {
        is(
                line(new double[] {3.3, 5.6, 7.1, 9.3, 10.7, 12.1}, new double[] {.5, .5, .5, .5, .5, .5}),
                1.867,
                0.465,
                1.757,
                0.120);
    }

    @Test
    void unequalWeights() {
        is(
                line(new double[] {3.2, 4.3, 7.6, 8.6, 11.7, 12.8}, new double[] {.5, .5, .5, 1, 1, 1}),
                0.885,
                0.530,
                2.057,
                0.178);
    }

    /** A point that was read ten times worse than the others hardly moves the line. */
    @Test
    void aPoorPointHardlyCounts() {
        Regression fit = line(new double[] {1, 2, 3, 4, 9}, new double[] {.01, .01, .01, .01, .1});
        assertThat(fit.coefficients().get(1).value()).isCloseTo(1, within(0.05));
    }
}
