package railwitness.analysis.transformer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CopperTest {
    /** AWG tables: diameter in mm and ohm per km at 20 degC (hyperphysics.phy-astr.gsu.edu, wire gauges; daycounter.com). */
    @ParameterizedTest
    @CsvSource({
        "10, 2.588, 3.28", "12, 2.053, 5.21", "14, 1.628, 8.28", "16, 1.291, 13.2",
        "18, 1.024, 20.9", "20, 0.812, 33.3", "22, 0.644, 52.9", "24, 0.511, 84.2"
    })
    void gaugesAreThoseOfTheTables(int gauge, double millimetres, double ohmsPerKilometre) {
        Wire wire = Wire.awg(gauge, 1);
        assertThat(wire.diameterMetres() * 1e3).isCloseTo(millimetres, within(0.0015));
        assertThat(wire.ohmsPerMetre(20) * 1e3).isCloseTo(ohmsPerKilometre, within(0.006 * ohmsPerKilometre));
    }

    /** 123 kHz: 186.09 um at 20 degC and 220 um at 120 degC, to 1.5 % (open test data of a magnetics library). */
    @Test
    void skinDepthAtAHundredAndTwentyThreeKilohertz() {
        assertThat(Copper.skinDepthMetres(123e3, 20)).isCloseTo(186.09e-6, within(0.015 * 186e-6));
        assertThat(Copper.skinDepthMetres(123e3, 120)).isCloseTo(220e-6, within(0.015 * 220e-6));
    }

    /** Gupta, Network Analysis and Synthesis, chapter 1: 1.3 ohm at 30 degC rising to 1.6 ohm is a rise of 61.05 K. */
    @Test
    void temperatureFromResistance() {
        assertThat(Copper.degCFromResistance(1.3, 30, 1.6)).isCloseTo(91.05, within(0.05));
    }

    @Test
    void theTwoWaysOfTemperatureAgree() {
        for (double degC = -20; degC <= 150; degC += 10) {
            double hot = 0.0022 * Copper.factor(degC) / Copper.factor(23);
            assertThat(Copper.degCFromResistance(0.0022, 23, hot)).isCloseTo(degC, within(1e-9));
        }
    }
}
