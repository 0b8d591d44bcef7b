package railwitness.logger.ui.screen.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Numbers as they are written on schematics and said at the bench. */
class TypedNumberTest {
    private final Locale before = Locale.getDefault(Locale.Category.FORMAT);

    @AfterEach
    void back() {
        Locale.setDefault(Locale.Category.FORMAT, before);
    }

    private static double typed(String text, String unit) {
        return TypedNumber.of(text, unit, false).orElseThrow();
    }

    @Test
    void commaAndPointAreTheSameInEveryLocale() {
        for (Locale locale : new Locale[] {Locale.UK, Locale.GERMANY, Locale.FRANCE}) {
            Locale.setDefault(Locale.Category.FORMAT, locale);
            assertThat(typed("10,5", "V")).isEqualTo(10.5);
            assertThat(typed("10.5", "V")).isEqualTo(10.5);
            assertThat(typed(" \u221238,5 ", "V")).isEqualTo(-38.5);
        }
    }

    @Test
    void prefixesCountAgainstTheFieldsOwnUnit() {
        assertThat(typed("250k", "Hz")).isEqualTo(250_000);
        assertThat(typed("4u7", "uF")).isEqualTo(4.7);
        assertThat(typed("4\u00b57", "uF")).isEqualTo(4.7);
        assertThat(typed("2200u", "uF")).isEqualTo(2200);
        assertThat(typed("2m2", "uF")).isEqualTo(2200);
        assertThat(typed("470n", "uF")).isEqualTo(0.47);
        assertThat(typed("22m", "ohm")).isEqualTo(0.022);
        assertThat(typed("0R5", "ohm")).isEqualTo(0.5);
        assertThat(typed("33 m\u03a9", "ohm")).isEqualTo(0.033);
        assertThat(typed("1M", "ohm")).isEqualTo(1e6);
        assertThat(typed("25 kHz", "Hz")).isEqualTo(25_000);
        assertThat(typed("13,8 V", "V")).isEqualTo(13.8);
    }

    @Test
    void shareIsWrittenInPerCent() {
        assertThat(TypedNumber.of("80", "", true)).hasValue(0.8);
        assertThat(TypedNumber.of("80 %", "", true)).hasValue(0.8);
        assertThat(TypedNumber.of("80 %", "V", false)).isEmpty();
    }

    @Test
    void whatIsNoNumberStaysNone() {
        for (String text : new String[] {"", "about ten", "4u7u", "k", "10,5,2", "1 2", "12 apples"}) {
            assertThat(TypedNumber.of(text, "V", false)).as(text).isEmpty();
        }
    }
}
