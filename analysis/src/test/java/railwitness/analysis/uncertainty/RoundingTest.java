package railwitness.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Rounding for print, GUM 7.2.6. */
class RoundingTest {

    /** GUM 7.2.2 prints 100.02147 g with u 0.35 mg; 7.2.6 a value 10.057 62 ohm with u 27 mohm as 10.058. */
    @Test
    void valueGoesToThePlaceOfTheUncertainty() {
        assertThat(Rounding.of(10.05762, 0.027).toString()).isEqualTo("10.058 +- 0.027");
        assertThat(Rounding.of(100.02147, 0.00035).toString()).isEqualTo("100.02147 +- 0.00035");
    }

    @Test
    void uncertaintyKeepsTwoDigits() {
        assertThat(Rounding.of(1, 0.0996).uncertaintyText()).isEqualTo("0.10");
        assertThat(Rounding.of(1, 0.5).toString()).isEqualTo("1.00 +- 0.50");
        assertThat(Rounding.of(-35.0249, 0.1049).toString()).isEqualTo("-35.02 +- 0.10");
        assertThat(Rounding.of(1234567, 1234).toString()).isEqualTo("1234600 +- 1200");
        assertThat(Rounding.of(0.0001234567, 1.26e-8).toString()).isEqualTo("0.000123457 +- 0.000000013");
    }

    @Test
    void exactValueStaysAsItIs() {
        assertThat(Rounding.of(3.25, 0).toString()).isEqualTo("3.25 +- 0");
    }
}
