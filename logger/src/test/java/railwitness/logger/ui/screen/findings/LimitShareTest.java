package railwitness.logger.ui.screen.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import railwitness.logger.reporting.findings.LimitShare;

/** One scale for every figure: 0 is ideal, 1 the limit. */
class LimitShareTest {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private static LimitShare most(double limit) {
        return new LimitShare(NONE, OptionalDouble.of(limit), false);
    }

    @Test
    void theLimitIsOneWhateverTheFigure() {
        assertThat(most(6).of(6)).isEqualTo(1);
        assertThat(new LimitShare(OptionalDouble.of(88), NONE, true).of(88)).isEqualTo(1);
        assertThat(new LimitShare(OptionalDouble.of(34.8), NONE, false).of(34.8))
                .isEqualTo(1);
        LimitShare both = new LimitShare(OptionalDouble.of(2.97), OptionalDouble.of(3.03), false);
        assertThat(both.of(2.97)).isCloseTo(1, within(1e-9));
        assertThat(both.of(3.03)).isCloseTo(1, within(1e-9));
        assertThat(both.of(3.0)).isCloseTo(0, within(1e-9));
    }

    @Test
    void whatIsNotAllowedIsBeyondOne() {
        assertThat(most(0.5).of(2)).isEqualTo(4);
        assertThat(new LimitShare(OptionalDouble.of(88), NONE, true).of(82)).isEqualTo(1.5);
        assertThat(new LimitShare(OptionalDouble.of(34.8), NONE, false).of(29)).isCloseTo(1.2, within(1e-9));
        assertThat(new LimitShare(OptionalDouble.of(34.8), NONE, false).of(38)).isLessThan(1);
    }
}
