package railwitness.analysis.transformer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoreLossTest {
    private static final CoreMaterial LOW_LOSS =
            Materials.named("low-loss power ferrite").orElseThrow();

    /** Steinmetz with the published coefficients at 100 degC, mW/cm^3, worked out by hand from the formula. */
    @ParameterizedTest
    @CsvSource({"25e3, 0.1, 8.48", "25e3, 0.2, 59.1", "50e3, 0.1, 19.0", "100e3, 0.1, 42.4", "100e3, 0.2, 295"})
    void sineLossAtGivenPoints(double hertz, double tesla, double milliwatts) {
        assertThat(LOW_LOSS.wattsPerCubicMetre(hertz, tesla, 100) / 1e3)
                .isCloseTo(milliwatts, within(0.01 * milliwatts));
    }

    /** Quoted for an older grade: 155 mW/cm^3 at 25 kHz, 200 mT; a data sheet's limit of 80 at 100 kHz, 100 mT is another's. */
    @Test
    void anOlderFerriteLosesMore() {
        CoreMaterial plain = Materials.named("power ferrite").orElseThrow();
        assertThat(plain.wattsPerCubicMetre(25e3, 0.2, 100) / 1e3).isCloseTo(155, within(2.0));
    }

    /** For a triangle of flux the loss is that of a sine within some 10 % (Venkatachalam and others, 2002). */
    @Test
    void aFullSquareDriveLosesAboutAsASine() {
        double sine = LOW_LOSS.wattsPerCubicMetre(25e3, 0.15, 80);
        assertThat(LOW_LOSS.wattsPerCubicMetreSquare(25e3, 0.15, 0.5, 80) / sine)
                .isBetween(0.85, 1.1);
    }

    /** The same swing in less time costs more: dB/dt to the power of alpha. */
    @Test
    void shorterPulsesOfTheSameSwingLoseMore() {
        double wide = LOW_LOSS.wattsPerCubicMetreSquare(25e3, 0.15, 0.5, 80);
        double narrow = LOW_LOSS.wattsPerCubicMetreSquare(25e3, 0.15, 0.25, 80);
        assertThat(narrow / wide).isCloseTo(Math.pow(2, 0.16), within(1e-6));
    }

    @Test
    void aHotCoreSaturatesEarlier() {
        assertThat(LOW_LOSS.saturationTesla(100)).isLessThan(LOW_LOSS.saturationTesla(25));
    }
}
