package railwitness.analysis.sisters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class IndividualsChartTest {
    /** NIST/SEMATECH e-Handbook 6.3.2.2, example: ten batches (data from memory, results as printed in a public copy). */
    private static final double[] BATCHES = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};

    @Test
    void handbookExampleIsReproduced() {
        IndividualsChart chart = IndividualsChart.of(BATCHES);
        assertThat(chart.centre()).isCloseTo(50.81, within(1e-9));
        assertThat(chart.meanRange()).isCloseTo(1.8778, within(5e-5));
        assertThat(chart.upper()).isCloseTo(55.8041, within(1e-3));
        assertThat(chart.lower()).isCloseTo(45.8159, within(1e-3));
        assertThat(chart.outside()).isEmpty();
        assertThat(chart.jumps()).isEmpty();
    }

    @Test
    void jumpBeyondTheRangesLimitIsNamedByItsSecondValue() {
        double[] values = new double[40];
        for (int i = 0; i < values.length; i++) {
            values[i] = 10 + (i % 2) * 0.1 + (i >= 20 ? 1 : 0);
        }
        assertThat(IndividualsChart.of(values).jumps()).containsExactly(20);
    }

    @Test
    void valueOutsideTheLimitsIsNamedByItsPlace() {
        double[] values = new double[40];
        for (int i = 0; i < values.length; i++) {
            values[i] = 10 + (i % 2) * 0.1;
        }
        values[7] = 11;
        assertThat(IndividualsChart.of(values).outside()).containsExactly(7);
    }

    @Test
    void oneValueAloneIsRefused() {
        assertThatThrownBy(() -> IndividualsChart.of(1)).hasMessageContaining("two or more");
        assertThatThrownBy(() -> IndividualsChart.of(1, Double.NaN)).hasMessageContaining("finite");
    }

    /** Without the odd one the mean is that of the others, and the mean range of 1, 1, 1 is 1. */
    @Test
    void limitsFromABaseThatLeavesASignalOut() {
        IndividualsChart chart = IndividualsChart.of(java.util.Set.of(2), 10, 11, 99, 10, 11);
        assertThat(chart.centre()).isEqualTo(10.5);
        assertThat(chart.meanRange()).isEqualTo(1);
        assertThat(chart.upper()).isCloseTo(10.5 + 3 / 1.128, org.assertj.core.api.Assertions.within(1e-12));
        assertThat(chart.outside()).containsExactly(2);
    }
}
