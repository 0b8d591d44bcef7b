package railwitness.logger.ui.screen.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class ElapsedTest {
    private final Locale before = Locale.getDefault(Locale.Category.FORMAT);

    @BeforeEach
    void english() {
        Locale.setDefault(Locale.Category.FORMAT, Locale.UK);
    }

    @AfterEach
    void back() {
        Locale.setDefault(Locale.Category.FORMAT, before);
    }

    @Test
    void hoursMinutesSeconds() {
        assertThat(Elapsed.of(3 * 3600 + 5 * 60 + 9, 0)).isEqualTo("3:05:09");
        assertThat(Elapsed.of(59.9996, 3)).isEqualTo("0:01:00.000");
        assertThat(Elapsed.of(7.25, 2)).isEqualTo("0:00:07.25");
        assertThat(Elapsed.of(100 * 3600, 0)).isEqualTo("100:00:00");
    }

    @Test
    void axisTakesTheLeastRoundStepThatFits() {
        assertThat(TimeRuler.step(3 * 86_400, 6)).isEqualTo(43_200);
        assertThat(TimeRuler.step(60, 6)).isEqualTo(10);
        assertThat(TimeRuler.step(0.02, 5)).isEqualTo(0.005);
        assertThat(Elapsed.places(0.005)).isEqualTo(3);
        assertThat(Elapsed.places(30)).isZero();
    }
}
