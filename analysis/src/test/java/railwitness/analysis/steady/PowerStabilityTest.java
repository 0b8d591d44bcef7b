package railwitness.analysis.steady;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** 10 CFR 430 Subpart B Appendix Z: 30 min at full load, then 5 min within 5 % (one output) or 1 % (several). */
class PowerStabilityTest {
    private static final double[] SECONDS =
            IntStream.rangeClosed(0, 300).asDoubleStream().toArray();

    private static double[] falling(double fraction) {
        return IntStream.rangeClosed(0, 300)
                .mapToDouble(i -> 200 * (1 - fraction * i / 300))
                .toArray();
    }

    @Test
    void severalOutputsAreHeldToOnePercent() {
        assertThat(PowerStability.of(2, 1800, SECONDS, falling(0.009)).kept()).isTrue();
        assertThat(PowerStability.of(2, 1800, SECONDS, falling(0.011)).kept()).isFalse();
    }

    @Test
    void oneOutputIsHeldToFivePercent() {
        assertThat(PowerStability.of(1, 1800, SECONDS, falling(0.049)).kept()).isTrue();
        assertThat(PowerStability.of(1, 1800, SECONDS, falling(0.051)).kept()).isFalse();
    }

    @Test
    void shortWarmUpOrShortWatchMayNotNameTheRegulation() {
        PowerStability hurried = PowerStability.of(2, 600, new double[] {0, 60}, new double[] {200, 200});
        assertThat(hurried.missing())
                .containsExactly(
                        "warm-up of 600 s at full load, not 1800 s", "input power watched for 60 s, not 300 s");
    }
}
