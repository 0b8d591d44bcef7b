package railwitness.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class LimitShareTest {
    private static final long SEED = 19;

    @Test
    void aShareIsWorkedOutByHand() {
        assertThat(new LimitShare(Limit.atMost(4.2), false).of(2.1)).isEqualTo(0.5);
        assertThat(new LimitShare(Limit.atLeast(0.86), true).of(0.93)).isCloseTo(0.5, within(1e-12));
        assertThat(new LimitShare(Limit.between(2.95, 3.05), false).of(2.975)).isCloseTo(0.5, within(1e-9));
        assertThat(new LimitShare(Limit.atLeast(34), false).of(36)).isCloseTo(34.0 / 36, within(1e-12));
        assertThat(new LimitShare(Limit.atMost(-34), false).of(-36)).isCloseTo(34.0 / 36, within(1e-12));
        assertThat(new LimitShare(Limit.atMost(0), false).of(0.1)).isEqualTo(10);
    }

    /** Whatever the limit: inside it the share is at most one, outside it is more. */
    @Test
    void oneIsTheLimit() {
        Random random = new Random(SEED);
        for (int i = 0; i < 2000; i++) {
            double a = random.nextGaussian() * 10;
            double b = a + random.nextDouble() * 10 + 1e-3;
            Limit limit = new Limit[] {Limit.atMost(a), Limit.atLeast(a), Limit.between(a, b)}[random.nextInt(3)];
            double value = random.nextGaussian() * 10;
            double share = new LimitShare(limit, false).of(value);
            assertThat(share)
                    .as("seed %d, run %d: %s of %s", SEED, i, value, limit)
                    .isNotNaN()
                    .isNotNegative();
            if (Math.abs(limit.margin(value)) > 1e-9) {
                assertThat(share <= 1)
                        .as("seed %d, run %d: %s of %s is %s", SEED, i, value, limit, share)
                        .isEqualTo(limit.margin(value) > 0);
            }
        }
    }
}
