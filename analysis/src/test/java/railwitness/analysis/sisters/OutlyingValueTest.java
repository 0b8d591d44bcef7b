package railwitness.analysis.sisters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class OutlyingValueTest {
    /** NIST/SEMATECH e-Handbook 1.3.5.17.1, example of mass spectrometer readings (from memory; printed cut short). */
    @Test
    void handbookExampleIsReproduced() {
        OutlyingValue found = OutlyingValue.of(0.05, 199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57);
        assertThat(found.place()).isEqualTo(7);
        assertThat(found.distance()).isCloseTo(2.4687, within(1e-4));
        assertThat(found.outlying()).isTrue();
    }

    /** Grubbs' table, one-sided, as printed in public copies: 8 values 2.03 (5 %) and 2.22 (1 %), 10 values 2.18 and 2.41. */
    @Test
    void criticalDistancesAreThoseOfTheTable() {
        assertThat(OutlyingValue.critical(0.05, 8)).isCloseTo(2.032, within(5e-4));
        assertThat(OutlyingValue.critical(0.01, 8)).isCloseTo(2.22, within(5e-3));
        assertThat(OutlyingValue.critical(0.05, 10)).isCloseTo(2.18, within(5e-3));
        assertThat(OutlyingValue.critical(0.01, 10)).isCloseTo(2.41, within(5e-3));
    }

    /** Why the chart alone is not enough for eight units: the odd one widens its own limits. */
    @Test
    void oddOneInTheMiddleEscapesTheChartButNotTheTest() {
        double[] values = {10.0, 10.1, 9.95, 10.05, 11.0, 10.02, 9.97, 10.08};
        assertThat(IndividualsChart.of(values).outside()).isEmpty();
        assertThat(OutlyingValue.of(0.01, values)).satisfies(found -> {
            assertThat(found.place()).isEqualTo(4);
            assertThat(found.outlying()).isTrue();
        });
    }

    @Test
    void likeValuesAreCalledOutlyingAsSeldomAsSaid() {
        Random random = new Random(20);
        int called = 0;
        for (int i = 0; i < 20_000; i++) {
            double[] values =
                    random.doubles(8).map(ignored -> random.nextGaussian()).toArray();
            called += OutlyingValue.of(0.05, values).outlying() ? 1 : 0;
        }
        assertThat(called / 20_000.0).as("seed 20").isCloseTo(0.05, within(0.006));
    }

    @Test
    void equalValuesAreNotOutlying() {
        assertThat(OutlyingValue.of(0.01, 5, 5, 5, 5).outlying()).isFalse();
    }
}
