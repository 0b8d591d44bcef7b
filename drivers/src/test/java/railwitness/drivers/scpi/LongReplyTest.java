package railwitness.drivers.scpi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** Replies without measure are told apart by their length alone. */
class LongReplyTest {
    @Test
    void tenThousandDigitsAreRefusedAtOnce() {
        long begun = System.nanoTime();
        assertThatThrownBy(() -> Numeric.of("9".repeat(10_000) + "x"))
                .hasMessage("a reply of 10001 characters is no number");
        assertThatThrownBy(() -> Numeric.of("9".repeat(3_000_000))).hasMessageContaining("is no number");
        assertThatThrownBy(() -> ErrorEntry.of("-113,\"" + "x".repeat(3_000_000)))
                .satisfies(e -> assertThat(e.getMessage().length()).isLessThan(200));
        assertThat((System.nanoTime() - begun) / 1e9).isLessThan(0.5);
    }
}
