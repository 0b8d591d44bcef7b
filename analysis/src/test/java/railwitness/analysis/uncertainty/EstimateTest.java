package railwitness.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** First-order propagation: the algebra of shared influences. */
class EstimateTest {
    private final Influence gain = Influence.rectangular("meter gain", 0.001, "1");
    private final Influence plusNoise = Influence.student("scatter, plus", 0.002, "V", 9);
    private final Estimate plus = Estimate.of(35.0, gain.times(35.0), plusNoise.times(1));
    private final Estimate minus = Estimate.of(-35.0, gain.times(-35.0));

    @Test
    void railsOnOneMeterShareItsGain() {
        assertThat(plus.correlation(minus)).isLessThan(-0.99);
        assertThat(plus.plus(minus).u()).isCloseTo(0.002, within(1e-12));
        assertThat(plus.minus(minus).u()).isCloseTo(Math.hypot(70 * 0.001 / Math.sqrt(3), 0.002), within(1e-12));
    }

    @Test
    void quotientOfOneMetersReadingsCancelsItsGain() {
        assertThat(plus.over(minus).u()).isCloseTo(0.002 / 35.0, within(1e-12));
    }

    @Test
    void influencesOfOneNameAreTwoCauses() {
        Estimate a = Estimate.of(1, Influence.normal("gain", 0.1, "V").times(1));
        Estimate b = Estimate.of(1, Influence.normal("gain", 0.1, "V").times(1));
        assertThat(a.minus(b).u()).isCloseTo(0.1 * Math.sqrt(2), within(1e-12));
        assertThat(a.minus(a).u()).isZero();
    }

    @Test
    void contributionsComeLargestFirst() {
        assertThat(plus.contributions()).extracting(Contribution::name).containsExactly("meter gain", "scatter, plus");
    }

    @Test
    void unknownAccuracySpreadsToEverythingWorkedOut() {
        Estimate bare = minus.scatterOnly();
        assertThat(plus.times(plus).known()).isTrue();
        assertThat(plus.times(bare).known()).isFalse();
        assertThat(Estimate.mean(List.of(plus, bare)).known()).isFalse();
    }

    @Test
    void badNumbersAreRefused() {
        assertThatThrownBy(() -> Estimate.exact(Double.NaN)).hasMessageContaining("NaN: must be a finite number");
        assertThatThrownBy(() -> Influence.normal("gain", -1, "V")).hasMessageContaining("gain is -1.0");
        assertThatThrownBy(() -> plus.over(Estimate.exact(0))).isInstanceOf(ArithmeticException.class);
    }

    @Test
    void coverageOfNormalIsThatOfTheNormal() {
        Coverage c = Estimate.of(1, Influence.normal("a", 2, "V").times(1)).coverage(0.95);
        assertThat(c.k()).isCloseTo(1.95996, within(1e-4));
        assertThat(c.how()).isEqualTo("normal");
    }
}
