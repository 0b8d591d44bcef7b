package railwitness.analysis.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import railwitness.analysis.uncertainty.Contribution;
import railwitness.analysis.uncertainty.Estimate;

/** Averages: what they are worth, and what they say of themselves. */
class AverageTest {

    @Test
    void constantReadingsHaveNoScatter() {
        Average average = Average.of("rail", "V", 35.01, 35.01, 35.01, 35.01);
        assertThat(average.mean().value()).isEqualTo(35.01);
        assertThat(average.mean().u()).isZero();
        assertThat(average.remarks()).isEmpty();
    }

    @Test
    void oneReadingIsItsOwnMean() {
        assertThat(Average.of("hand-read", "V", 12.3).mean().value()).isEqualTo(12.3);
    }

    @Test
    void independentReadingsAreWorthTheirNumber() {
        double[] readings = new SplittableRandom(3).doubles(2000).toArray();
        Average average = Average.of("noise", "V", readings);
        assertThat(average.effectiveCount()).isGreaterThan(1500);
        assertThat(average.mean().u()).isCloseTo(1 / Math.sqrt(12 * 2000), within(1e-3));
    }

    @Test
    void averageOverADriftSaysSo() {
        SplittableRandom random = new SplittableRandom(4);
        double[] readings = new double[100];
        for (int i = 0; i < 100; i++) {
            readings[i] = 35 + 0.001 * i + 0.005 * random.nextGaussian();
        }
        Average average = Average.of("plus.voltage", "V", readings);
        assertThat(average.drift().distinguishable()).isTrue();
        assertThat(average.remarks()).anyMatch(remark -> remark.startsWith("averaged over a drift of 0.1"));
        assertThat(average.mean().contributions())
                .extracting(Contribution::name)
                .startsWith("drift over the average of plus.voltage");
        assertThat(average.mean().u()).isCloseTo(0.1 / 2 / Math.sqrt(3), within(0.005));
    }

    @Test
    void readingsTakenTogetherStayCorrelated() {
        SplittableRandom random = new SplittableRandom(5);
        double[] plus = new double[200];
        double[] minus = new double[200];
        for (int i = 0; i < 200; i++) {
            double common = random.nextGaussian();
            plus[i] = 35 + common;
            minus[i] = -35 - common + 0.1 * random.nextGaussian();
        }
        List<Estimate> means = Average.together("rails", List.of(plus, minus));
        assertThat(means.get(0).correlation(means.get(1))).isLessThan(-0.98);
        assertThat(means.get(0).u()).isBetween(0.05, 0.11);
    }

    @Test
    void timesMustNotRunBackwards() {
        assertThatThrownBy(() -> Average.of("rail", "V", new double[] {0, 2, 1}, new double[] {1, 2, 3}))
                .hasMessageContaining("time of reading 3 is 1.0 s");
    }
}
