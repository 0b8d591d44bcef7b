package railwitness.drivers.scpi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NumericProperties {
    private static final long SEED = 20260511;
    private final Random random = new Random(SEED);

    private double number() {
        return (random.nextBoolean() ? 1 : -1) * random.nextDouble() * Math.pow(10, random.nextInt(24) - 12);
    }

    @Test
    void everyNumberComesBackFromItsNr3Form() {
        for (int i = 0; i < 5_000; i++) {
            double value = number();
            String text = String.format(Locale.ROOT, "%+.8E", value);
            assertThat(((Numeric.Value) Numeric.of(text)).value())
                    .as("seed %d, %s", SEED, text)
                    .isCloseTo(value, within(Math.abs(value) * 1e-8));
        }
    }

    @Test
    void everyWrittenNumberComesBackToNineDigits() {
        for (int i = 0; i < 5_000; i++) {
            double value = number();
            String text = Numeric.write(value);
            assertThat(((Numeric.Value) Numeric.of(text)).value())
                    .as("seed %d, %s", SEED, text)
                    .isCloseTo(value, within(Math.abs(value) * 1e-8));
        }
    }

    @Test
    void anyTextIsANumberOrIsRefused() {
        String letters = "0123456789+-.E eV,\"#";
        for (int i = 0; i < 10_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int n = random.nextInt(8); n >= 0; n--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            assertThat(finiteOrRefused(text.toString()))
                    .as("seed %d, '%s'", SEED, text)
                    .isTrue();
        }
    }

    private static boolean finiteOrRefused(String text) {
        try {
            return !(Numeric.of(text) instanceof Numeric.Value number) || Double.isFinite(number.value());
        } catch (IllegalArgumentException refused) {
            return refused.getMessage().contains("is not a number");
        }
    }
}
