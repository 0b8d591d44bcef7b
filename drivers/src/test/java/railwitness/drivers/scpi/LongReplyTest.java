package railwitness.drivers.scpi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Replies without measure are told apart by their length alone. */
class LongReplyTest {
    /** Ten million digits worked out as a number would take hours: done within the limit, they were not. */
    @Test
    @Timeout(60)
    void digitsWithoutMeasureAreRefusedByTheirLength() {
        assertThatThrownBy(() -> Numeric.of("9".repeat(10_000_000))).hasMessageContaining("is no number");
        assertThatThrownBy(() -> Numeric.of("9".repeat(10_000) + "x"))
                .hasMessage("a reply of 10001 characters is no number");
        assertThatThrownBy(() -> Numeric.of("9".repeat(3_000_000))).hasMessageContaining("is no number");
        assertThatThrownBy(() -> ErrorEntry.of("-113,\"" + "x".repeat(3_000_000)))
                .satisfies(e -> assertThat(e.getMessage().length()).isLessThan(200));
    }
}
