package railwitness.logger.ui.screen.widgets;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class NumbersTest {
    private final Locale before = Locale.getDefault(Locale.Category.FORMAT);

    @AfterEach
    void back() {
        Locale.setDefault(Locale.Category.FORMAT, before);
    }

    @Test
    void negativeNumbersHaveATrueMinus() {
        assertThat(Numbers.fixed(-36.704, 2)).isEqualTo("\u221236.70");
    }

    @Test
    void zeroHasNoSign() {
        assertThat(Numbers.fixed(-0.001, 2)).isEqualTo("0.00");
    }

    @Test
    void numbersFollowTheLocaleOnScreen() {
        Locale.setDefault(Locale.Category.FORMAT, Locale.GERMANY);
        assertThat(Numbers.fixed(1234.5, 1)).isEqualTo("1234,5");
        assertThat(Numbers.parsed("0,35")).hasValue(0.35);
        assertThat(Numbers.parsed("0.35")).hasValue(0.35);
    }

    @Test
    void whatIsNoNumberIsNotRead() {
        assertThat(Numbers.parsed("12 ohm")).isEmpty();
        assertThat(Numbers.parsed("NaN")).isEmpty();
    }

    @Test
    void spansAreInWords() {
        assertThat(Numbers.span(Duration.ofSeconds(320))).isEqualTo("5 min 20 s");
    }
}
