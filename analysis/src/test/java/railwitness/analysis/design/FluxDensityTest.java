package railwitness.analysis.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class FluxDensityTest {
    private static final double ETD39_SQUARE_METRES = 1.25e-4;

    @Test
    void threeTurnsAtLowBatteryGiveFourteenHundredGauss() {
        // 250 W inverter example: 10.5 V, 50 kHz, 1.25 cm^2; recomputed from its inputs with V 1e8 / (4 f B A)
        assertThat(FluxDensity.peakTesla(10.5, 0.5, 50_000, 3, ETD39_SQUARE_METRES))
                .isCloseTo(0.14, within(1e-9));
    }

    @Test
    void fiveTurnsOfAHomeBuiltStepUp() {
        // a published home-built 12 V step-up, 5+5 turns on 1.25 cm^2; recomputed from its inputs
        assertThat(FluxDensity.peakTesla(12, 0.5, 50_000, 5, ETD39_SQUARE_METRES))
                .isCloseTo(0.096, within(5e-4));
        assertThat(FluxDensity.peakTesla(14.4, 0.5, 40_000, 5, ETD39_SQUARE_METRES))
                .isCloseTo(0.144, within(5e-4));
    }

    @Test
    void noFrequencyIsRefused() {
        assertThatThrownBy(() -> FluxDensity.peakTesla(12, 0.5, 0, 5, ETD39_SQUARE_METRES))
                .hasMessage("frequency_Hz 0 must be above 0");
    }
}
