package railwitness.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Rows of a budget add up to the result. */
class BudgetTest {
    private final Influence gain = Influence.rectangular("meter gain", 0.003, "V/V");
    private final Estimate mean = Estimate.fromSimultaneous("readings", List.of(new double[] {35.1, 35.2, 35.0, 35.1}))
            .get(0);
    private final Budget budget =
            Budget.of("plus.voltage", mean.with(gain.times(mean.value())).scale(2), "V");

    @Test
    void sensitivityTimesInputIsTheContribution() {
        Budget.Row row = budget.rows().get(0);
        assertThat(row.quantity()).isEqualTo("meter gain");
        assertThat(row.u()).isCloseTo(0.003 / Math.sqrt(3), within(1e-15));
        assertThat(row.sensitivity()).isCloseTo(2 * 35.1, within(1e-9));
        assertThat(row.contribution()).isCloseTo(row.u() * row.sensitivity(), within(1e-12));
        assertThat(row.unit()).isEqualTo("V/V");
    }

    @Test
    void contributionsAddInSquareToTheResult() {
        double sum = budget.rows().stream()
                .mapToDouble(row -> row.contribution() * row.contribution())
                .sum();
        assertThat(Math.sqrt(sum)).isCloseTo(budget.result().u(), within(1e-12));
    }

    @Test
    void readingsAreOneRowOfTheirDegreesOfFreedom() {
        Budget.Row row = budget.rows().get(1);
        assertThat(row.quantity()).isEqualTo("readings");
        assertThat(row.distribution()).isEqualTo("Student");
        assertThat(row.degreesOfFreedom()).isEqualTo(3);
        assertThat(row.contribution()).isCloseTo(2 * Math.sqrt(0.02 / 3 / 4), within(1e-9));
    }

    /** EA-4/02: a row of readings shows their mean, an instrument's error zero. */
    @Test
    void aRowShowsTheValueOfItsInput() {
        Estimate average = railwitness.analysis.steady.Average.of("plus.voltage, 100 %", "V", 35.1, 35.2, 35.0, 35.1)
                .mean();
        Budget of = Budget.of("plus.voltage", average.with(gain.times(35.1)), "V");
        assertThat(of.rows())
                .extracting(Budget.Row::quantity, Budget.Row::value)
                .containsExactlyInAnyOrder(
                        org.assertj.core.api.Assertions.tuple("meter gain", 0.0),
                        org.assertj.core.api.Assertions.tuple("scatter of plus.voltage, 100 %", 35.1));
    }
}
