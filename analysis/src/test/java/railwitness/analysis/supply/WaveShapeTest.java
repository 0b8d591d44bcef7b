package railwitness.analysis.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaveShapeTest {

    @ParameterizedTest
    @CsvSource({
        // crest and form factors as tabled in a meter maker's manual; errors: Rajput, 2.2 and 2.3: -3.87 %, +11 %
        "SINE, 1.4142, 1.1107, 0",
        "SQUARE, 1, 1, 0.111",
        "TRIANGLE, 1.7321, 1.1547, -0.038",
        "SAW_TOOTH, 1.7321, 1.1547, -0.038"
    })
    void factorsAreThoseOfTheTables(WaveShape shape, double crest, double form, double error) {
        assertThat(shape.crestFactor()).isCloseTo(crest, within(5e-5));
        assertThat(shape.formFactor()).isCloseTo(form, within(5e-5));
        assertThat(shape.averageRespondingError()).isCloseTo(error, within(1e-3));
    }

    @Test
    void triangleOfThreePeakHasItsRms() {
        // Jacob, Power Electronics, chapter 3: triangle of 3 A peak, 1.73 A rms
        assertThat(WaveShape.TRIANGLE.peakToPeakVolts(1.7321) / 2).isCloseTo(3, within(1e-3));
    }
}
