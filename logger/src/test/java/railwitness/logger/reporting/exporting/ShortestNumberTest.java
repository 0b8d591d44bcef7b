package railwitness.logger.reporting.exporting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ShortestNumberTest {
    private static final long SEED = 25;

    @Test
    void noMoreIsWrittenThanItTakes() {
        assertThat(ShortestNumber.of(13.8)).isEqualTo("13.8");
        assertThat(ShortestNumber.of(36)).isEqualTo("36");
        assertThat(ShortestNumber.of(-0.0021)).isEqualTo("-0.0021");
        assertThat(ShortestNumber.of(-1e-6)).isEqualTo("-1E-6");
        assertThat(ShortestNumber.of(2e-308)).isEqualTo("2E-308");
        assertThat(ShortestNumber.of(0.1 + 0.2)).isEqualTo("0.30000000000000004");
        // Double.toString of Java 17 gives 2.0000000000000002E-3 and the like for some of these
        assertThat(ShortestNumber.of(2.0e-3)).isEqualTo("0.002");
        assertThat(ShortestNumber.of(2.2250738585072014E-308)).isEqualTo("2.2250738585072014E-308");
    }

    @Test
    void everyNumberReadsBackTheSameAndIsNoLongerThanJavasOwn() {
        Random random = new Random(SEED);
        for (int i = 0; i < 20_000; i++) {
            double value = i % 2 == 0
                    ? Double.longBitsToDouble(random.nextLong())
                    : Math.round(random.nextGaussian() * 1e6) / 1e4;
            if (Double.isFinite(value)) {
                String text = ShortestNumber.of(value);
                assertThat(Double.doubleToRawLongBits(Double.parseDouble(text)))
                        .as("seed %d, run %d: %s", SEED, i, text)
                        .isEqualTo(Double.doubleToRawLongBits(value));
                assertThat(digits(text)).as(text).isLessThanOrEqualTo(digits(Double.toString(value)));
            }
        }
    }

    private static long digits(String text) {
        String number = text.replaceAll("E.*", "").replaceAll("[-.]", "").replaceAll("^0+|0+$", "");
        return number.length();
    }
}
