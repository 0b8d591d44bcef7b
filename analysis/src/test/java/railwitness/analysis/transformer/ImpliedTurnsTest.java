package railwitness.analysis.transformer;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

class ImpliedTurnsTest {
    private final Transformer sheet = Transformer.of(4, 12);

    @Test
    void missingTurnIsSaid() {
        assertThat(ImpliedTurns.of(sheet, ratio(2.753, 0.004)).orElseThrow().words())
                .isEqualTo("looks like 11 secondary turns, not 12, if the primary is 4");
    }

    @Test
    void sheetsTurnsAgree() {
        ImpliedTurns implied = ImpliedTurns.of(sheet, ratio(3.003, 0.004)).orElseThrow();
        assertThat(implied.candidates().get(0).turns()).isEqualTo(12);
        assertThat(implied.candidates().get(0).agreement()).isGreaterThan(0.5);
        assertThat(implied.candidates().get(1).agreement()).isLessThan(1e-6);
    }

    @Test
    void wideUncertaintyAllowsNoWord() {
        assertThat(ImpliedTurns.of(sheet, ratio(2.9, 0.1))).isEmpty();
        assertThat(ImpliedTurns.of(sheet, Estimate.exact(3).scatterOnly())).isEmpty();
    }

    @Test
    void ratioBetweenTwoTurnsAgreesWithNone() {
        assertThat(ImpliedTurns.of(sheet, ratio(2.875, 0.001)).orElseThrow().words())
                .startsWith("no whole number");
    }

    private static Estimate ratio(double value, double u) {
        return Estimate.of(value, Influence.normal("ratio", u, "1").times(1));
    }
}
