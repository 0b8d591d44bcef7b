package railwitness.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

/**
 * Global risks of the decision rules (JCGM 106:2012 clause 9) against published tables, as printed in public copies:
 * the probability that a product of a normal process is wrongly accepted or rejected by our own limits and rules.
 */
class RiskTablesTest {
    private static final NormalDistribution NORMAL = new NormalDistribution();
    private static final double STEP = 0.005;

    /** Process sigma 1 about zero, limits +-limit, meter of standard deviation u; accepted inside +-acceptance. */
    private static double[] risks(double limit, double acceptance, double u) {
        Limit tolerance = Limit.between(-limit, limit);
        double falselyAccepted = 0;
        double falselyRejected = 0;
        for (double truth = -8 + STEP / 2; truth < 8; truth += STEP) {
            double weight = NORMAL.density(truth) * STEP;
            double accepted = accepted(acceptance, truth, u);
            boolean conforms = DecisionRule.SIMPLE_ACCEPTANCE.outcome(tolerance.margin(truth), 0) == Outcome.PASS;
            falselyAccepted += conforms ? 0 : weight * accepted;
            falselyRejected += conforms ? weight * (1 - accepted) : 0;
        }
        return new double[] {falselyAccepted, falselyRejected};
    }

    private static double accepted(double acceptance, double truth, double u) {
        return NORMAL.cumulativeProbability((acceptance - truth) / u)
                - NORMAL.cumulativeProbability((-acceptance - truth) / u);
    }

    /** Deaver's tables: limit of 2 sigma. */
    @Test
    void limitOfTwoSigma() {
        assertThat(risks(2, 2, 2 / 4.0 / 2)[0]).isCloseTo(0.008, within(5e-4));
        assertThat(risks(2, 2, 2 / 4.0 / 2)[1]).isCloseTo(0.015, within(5e-4));
        assertThat(risks(2, 2 * 0.91, 2 / 2.0 / 2)[0]).isCloseTo(0.008, within(5e-4));
        assertThat(risks(2, 2 * 0.91, 2 / 2.0 / 2)[1]).isCloseTo(0.066, within(5e-4));
    }

    /** Deaver's tables: limit of 2.5 sigma, ratio 4:1. */
    @Test
    void limitOfTwoAndAHalfSigma() {
        assertThat(risks(2.5, 2.5, 1 / 4.0)[0]).isCloseTo(0.0025, within(5e-4));
    }
}
