package railwitness.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/** Verdicts against JCGM 106:2012 and ILAC-G8:09/2019, values as printed in public copies or as said. */
class VerdictTest {

    private static Estimate figure(double value, double u) {
        return Estimate.of(value, Influence.normal("meter", u, "V").times(1));
    }

    private static Requirement requirement(Limit limit) {
        return new Requirement("rail voltage", "rail voltage", Optional.of("plus"), limit);
    }

    private static Verdict guarded(Limit limit, Estimate figure) {
        return Verdict.of(requirement(limit), figure, DecisionRule.GUARD_BAND);
    }

    /** JCGM 106, example of a breakdown voltage (from memory; recomputed 0.9192). */
    @Test
    void breakdownVoltageConforms() {
        assertThat(Limit.atMost(-5.4).probability(figure(-5.47, 0.05))).isCloseTo(0.92, within(5e-3));
    }

    /** JCGM 106, example of a container's burst pressure, kPa (from memory; recomputed 0.9832). */
    @Test
    void containerConforms() {
        assertThat(Limit.atLeast(490).probability(figure(507, 8))).isCloseTo(0.98, within(5e-3));
    }

    /** ILAC-G8:09/2019, non-binary statement with guard band w = U; U = 1 here. */
    @Test
    void fourOutcomesAboutALimit() {
        Limit limit = Limit.between(-10, 10);
        double u = 1 / 1.959964;
        assertThat(guarded(limit, figure(8.9, u)).outcome()).isEqualTo(Outcome.PASS);
        assertThat(guarded(limit, figure(9.1, u)).outcome()).isEqualTo(Outcome.CONDITIONAL_PASS);
        assertThat(guarded(limit, figure(10.9, u)).outcome()).isEqualTo(Outcome.CONDITIONAL_FAIL);
        assertThat(guarded(limit, figure(11.1, u)).outcome()).isEqualTo(Outcome.FAIL);
    }

    /**
     * JCGM 106:2012, table of the acceptance of a single limit: conformance probability and distance to it in u (from memory;
     * recomputed). At a pass that is just one, the probability is 95 %, not the 97.5 % of a two-sided U.
     */
    @Test
    void aSingleLimitHasTheOneSidedGuardBand() {
        double[][] table = {{0.80, 0.84}, {0.90, 1.28}, {0.95, 1.64}, {0.99, 2.33}, {0.999, 3.09}};
        for (double[] row : table) {
            assertThat(Limit.atMost(10).probability(figure(10 - row[1] * 0.5, 0.5)))
                    .isCloseTo(row[0], within(1.5e-3));
        }
        Limit single = Limit.atMost(10);
        assertThat(single.guardBand(figure(5, 0.5))).isCloseTo(1.645 * 0.5, within(1e-3));
        assertThat(guarded(single, figure(10 - 1.70 * 0.5, 0.5)).outcome()).isEqualTo(Outcome.PASS);
        assertThat(guarded(single, figure(10 - 1.60 * 0.5, 0.5)).outcome()).isEqualTo(Outcome.CONDITIONAL_PASS);
        assertThat(guarded(Limit.atLeast(10), figure(10 - 1.70 * 0.5, 0.5)).outcome())
                .isEqualTo(Outcome.FAIL);
        assertThat(guarded(Limit.between(0, 10), figure(10 - 1.70 * 0.5, 0.5)).outcome())
                .isEqualTo(Outcome.CONDITIONAL_PASS);
    }

    /** A rectangle exceeds 0.9 of its half width with 5 % to one side, a Student figure of 4 degrees of freedom 2.13 u. */
    @Test
    void theOneSidedBandIsThatOfTheFiguresOwnShape() {
        Estimate digits = Estimate.of(5, Influence.rectangular("digit", 1, "V").times(1));
        assertThat(Limit.atMost(10).guardBand(digits)).isCloseTo(0.9, within(5e-3));
        Estimate few = Estimate.of(5, Influence.student("few", 1, "V", 4).times(1));
        assertThat(Limit.atMost(10).guardBand(few)).isCloseTo(2.132, within(5e-3));
    }

    /** A micrometer of limits +-3.0 um and U = 1.0 um, as printed in a public copy. */
    @Test
    void micrometer() {
        Limit limit = Limit.between(-3.0, 3.0);
        double u = 1.0 / 1.959964;
        assertThat(guarded(limit, figure(1.7, u)).outcome()).isEqualTo(Outcome.PASS);
        assertThat(guarded(limit, figure(2.5, u)).outcome()).isEqualTo(Outcome.CONDITIONAL_PASS);
        assertThat(guarded(limit, figure(-2.5, u)).outcome()).isEqualTo(Outcome.CONDITIONAL_PASS);
    }

    /** ILAC-G8:09/2019: risk up to 50 % at the limit without guard band, below 2.5 % beyond one of U. */
    @Test
    void riskAtTheLimitIsThatOfTheRule() {
        assertThat(1 - Limit.atMost(10).probability(figure(10, 0.5))).isCloseTo(0.5, within(1e-9));
        double atGuard = 10 - figure(0, 0.5).coverage(0.95).expanded();
        assertThat(1 - Limit.atMost(10).probability(figure(atGuard, 0.5))).isCloseTo(0.025, within(1e-6));
        assertThat(1 - Limit.atMost(10).probability(figure(10 - 2 * 0.5, 0.5))).isCloseTo(0.0228, within(1e-4));
        assertThat(1 - Limit.atMost(10).probability(figure(10 - 1.645 * 0.5, 0.5)))
                .isCloseTo(0.05, within(1e-4));
    }

    @Test
    void twoSidedProbabilityIsThatOfBothEnds() {
        assertThat(Limit.between(-2, 2).probability(figure(0, 1))).isCloseTo(0.9545, within(1e-4));
        assertThat(Limit.between(3, 3).probability(Estimate.exact(3))).isEqualTo(1);
    }

    @Test
    void rectangleWhollyInsideConformsWithCertainty() {
        Estimate digits =
                Estimate.of(9.9, Influence.rectangular("last digit", 0.05, "V").times(1));
        assertThat(Limit.atMost(10).probability(digits)).isCloseTo(1, within(1e-9));
    }

    @Test
    void unknownAccuracyIsNotJudgedUnderAGuardBand() {
        Verdict verdict = guarded(Limit.atMost(10), figure(5, 0.1).scatterOnly());
        assertThat(verdict.outcome()).isEqualTo(Outcome.NOT_JUDGED);
        assertThat(verdict.reason()).startsWith("scatter only");
        assertThat(verdict.probability()).isEmpty();
    }

    @Test
    void unknownAccuracyUnderSimpleAcceptanceIsJudgedAndSaysSo() {
        Verdict verdict =
                Verdict.of(requirement(Limit.atMost(10)), figure(5, 0.1).scatterOnly(), DecisionRule.SIMPLE_ACCEPTANCE);
        assertThat(verdict.outcome()).isEqualTo(Outcome.PASS);
        assertThat(verdict.reason()).contains("scatter only");
        assertThat(verdict.probability()).isEmpty();
    }

    @Test
    void figureThatCanOnlyBeTooSmallProvesAFailButNoPass() {
        Requirement ripple = requirement(Limit.atMost(0.1));
        String why = "the meter's band ends at 100 kHz";
        assertThat(Verdict.ofLeast(ripple, figure(0.2, 0.01), DecisionRule.GUARD_BAND, why)
                        .outcome())
                .isEqualTo(Outcome.FAIL);
        Verdict open = Verdict.ofLeast(ripple, figure(0.05, 0.01), DecisionRule.GUARD_BAND, why);
        assertThat(open.outcome()).isEqualTo(Outcome.NOT_JUDGED);
        assertThat(open.reason()).startsWith(why);
        assertThatThrownBy(() ->
                        Verdict.ofLeast(requirement(Limit.atLeast(1)), figure(2, 0.1), DecisionRule.GUARD_BAND, why))
                .hasMessageContaining("only against 'at most'");
    }

    @Test
    void unitIsFitOnlyWhereEverythingWasJudgedAndPassed() {
        Limit limit = Limit.atMost(10);
        Verdict pass = guarded(limit, figure(5, 0.1));
        Verdict conditional = guarded(limit, figure(10.1, 0.1));
        Verdict open = guarded(limit, figure(5, 0.1).scatterOnly());
        assertThat(Verdict.overall(List.of(pass, pass)).words()).isEqualTo("fit");
        assertThat(Verdict.overall(List.of(pass, open)).words()).isEqualTo("not judged");
        assertThat(Verdict.overall(List.of(pass, open, conditional)).words()).isEqualTo("not fit");
        assertThat(Verdict.overall(List.of())).isEqualTo(Fitness.NOT_JUDGED);
    }

    @Test
    void limitsThatCannotBeAreRefused() {
        assertThatThrownBy(() -> Limit.between(2, 1)).hasMessageContaining("lower limit is 2.0");
        assertThatThrownBy(() -> Limit.atMost(Double.NaN)).hasMessageContaining("NaN: must be a finite number");
    }
}
