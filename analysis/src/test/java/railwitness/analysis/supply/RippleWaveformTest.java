package railwitness.analysis.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railwitness.analysis.reference.SimulatedSupply;

class RippleWaveformTest {

    @ParameterizedTest
    @CsvSource({
        "wave_healthy.csv, 0.09734782, 0.03140951, 50000",
        "wave_fault_b.csv, 0.222919, 0.07627334, 25000",
        "wave_fault_c.csv, 0.1733597, 0.05620489, 50000",
        "wave_fault_c2.csv, 0.8568077, 0.2766392, 50000"
    })
    void simulatedWaveformsAgreeWithTheirTable(String file, double peakToPeak, double rms, double strongestHz) {
        // ngspice; peak to peak and rms as worked out from the same samples by the simulation's own table
        RippleWaveform wave = simulated(file);
        assertThat(wave.peakToPeak().value()).isCloseTo(peakToPeak, Percentage.withPercentage(1));
        assertThat(wave.rms().value()).isCloseTo(rms, Percentage.withPercentage(0.1));
        assertThat(wave.spectrum().strongestAboveHz(1000)).isCloseTo(strongestHz, within(1000.0));
    }

    @Test
    void everyOtherPulseMissingShowsAtTheSwitchingFrequency() {
        assertThat(simulated("wave_healthy.csv").shareAtCycle().orElseThrow()).isLessThan(0.02);
        assertThat(simulated("wave_fault_c2.csv").shareAtCycle().orElseThrow()).isLessThan(0.02);
        assertThat(simulated("wave_fault_b.csv").shareAtCycle().orElseThrow()).isGreaterThan(0.8);
    }

    @Test
    void triangleHasItsCrestFactor() {
        // crest factor of a triangle 1.7321, rms = peak to peak / (2 root 3): common textbook table of meter makers
        RippleWaveform wave = of(phase -> phase < 0.5 ? 4 * phase - 1 : 3 - 4 * phase);
        assertThat(wave.peakToPeak().value() / 2 / wave.rms().value()).isCloseTo(1.7321, within(0.002));
    }

    @Test
    void sineAndSquareHaveTheirCrestFactors() {
        RippleWaveform sine = of(phase -> Math.sin(2 * Math.PI * phase));
        RippleWaveform square = of(phase -> phase < 0.5 ? 1 : -1);
        assertThat(sine.peakToPeak().value() / 2 / sine.rms().value()).isCloseTo(1.4142, within(0.002));
        assertThat(square.peakToPeak().value() / 2 / square.rms().value()).isCloseTo(1, within(0.002));
    }

    @Test
    void capacitorInputSawToothOfBoylestad() {
        // Boylestad and Nashelsky, ch. 15: full wave, 60 Hz, 50 mA, 100 uF: 1.2 V rms (2.4 Idc / C); recomputed 1.2028
        // V
        double peakToPeak = 0.050 / (2 * 60 * 100e-6);
        RippleWaveform wave = of(phase -> peakToPeak * (0.5 - phase));
        assertThat(wave.rms().value()).isCloseTo(1.2, within(0.005));
    }

    @Test
    void pulseOfOneTenthDutyHasItsAlternatingRms() {
        // ac rms = sqrt(D - D^2); 10 % duty and 3 V peak: 0.95 V rms in all, as printed in a meter leaflet
        RippleWaveform wave = of(phase -> phase < 0.1 ? 3 : 0);
        assertThat(wave.rms().value()).isCloseTo(3 * Math.sqrt(0.1 - 0.01), within(0.01));
        assertThat(Math.hypot(wave.rms().value(), 0.3)).isCloseTo(0.95, within(0.01));
    }

    @Test
    void tooShortAWaveformIsRefused() {
        assertThatThrownBy(() -> RippleWaveform.of(
                        new double[3], 1e-6, OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty()))
                .hasMessage("a waveform of 3 samples must have 16 or more");
    }

    private static RippleWaveform simulated(String file) {
        double[] volts = SimulatedSupply.lines(file).stream()
                .skip(1)
                .mapToDouble(Double::parseDouble)
                .toArray();
        return RippleWaveform.of(volts, 0.5e-6, OptionalDouble.of(25_000), OptionalDouble.of(1e6), Optional.empty());
    }

    /** Twenty cycles of a shape over one cycle, 1000 samples each. */
    private static RippleWaveform of(DoubleUnaryOperator shape) {
        double[] volts = IntStream.range(0, 20_000)
                .mapToDouble(i -> shape.applyAsDouble((i % 1000) / 1000.0))
                .toArray();
        return RippleWaveform.of(volts, 1e-6, OptionalDouble.of(1000), OptionalDouble.empty(), Optional.empty());
    }
}
