package railwitness.drivers.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import railwitness.drivers.reading.Accuracy.StatedAs;

class AccuracyTest {
    private final Accuracy stated = new Accuracy(0.015, 0.004, 2, 0.001, 0.01, 0.0005, 0.0001, StatedAs.LIMIT);

    /** Common practice, no source: the parts of a data-sheet statement are added up. */
    @Test
    void partsAddUp() {
        assertThat(stated.halfWidthAt(36, 100, 23)).isCloseTo(0.0054 + 0.004 + 0.002 + 0.01, within(1e-12));
    }

    @Test
    void signOfTheReadingDoesNotMatter() {
        assertThat(stated.halfWidthAt(-36, 100, 23)).isEqualTo(stated.halfWidthAt(36, 100, 23));
    }

    @Test
    void temperatureCoefficientCountsOutsideOf18To28Degrees() {
        double within = stated.halfWidthAt(36, 100, 28);
        assertThat(within).isEqualTo(stated.halfWidthAt(36, 100, 18));
        assertThat(stated.halfWidthAt(36, 100, 38) - within).isCloseTo(10 * (0.00018 + 0.0001), within(1e-12));
        assertThat(stated.halfWidthAt(36, 100, 8) - within).isCloseTo(10 * (0.00018 + 0.0001), within(1e-12));
    }

    @Test
    void negativePartIsRefused() {
        assertThatThrownBy(() -> Accuracy.limit(-0.1, 0, 0))
                .hasMessage("accuracy reading_pct -0.1 must be zero or more");
    }

    /** Source: JCGM 100 (GUM) 4.3.7, a rectangular distribution of half-width a has a standard uncertainty of a / root 3. */
    @Test
    void rectangularHalfWidthIsDividedByRootThree() {
        assertThat(new InstrumentError("gain", "g", -0.3, InstrumentError.Kind.RECTANGULAR, true).standardUncertainty())
                .isCloseTo(0.1732050808, within(1e-9));
        assertThat(new InstrumentError("gain", "g", 0.3, InstrumentError.Kind.NORMAL, true).standardUncertainty())
                .isEqualTo(0.3);
    }
}
