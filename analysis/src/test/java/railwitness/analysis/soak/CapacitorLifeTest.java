package railwitness.analysis.soak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The ten-degree rule (common practice), values of makers' public notes. */
class CapacitorLifeTest {

    /** 105 degC, 2000 h: 4000 h at 95, 8000 h at 85, 32 000 h at 65 degC. */
    @Test
    void lifeDoublesEachTenDegrees() {
        CapacitorLife life = new CapacitorLife(2000, 105);
        assertThat(life.hoursAt(95)).isCloseTo(4000, within(1e-6));
        assertThat(life.hoursAt(85)).isCloseTo(8000, within(1e-6));
        assertThat(life.hoursAt(65)).isCloseTo(32_000, within(1e-6));
    }

    /** 1000 h at 105 degC, eight hours each at 45, 55, 65 degC: as if at 57.2 degC all the time. */
    @Test
    void mixedProfileCountsItsHotHoursMost() {
        CapacitorLife life = new CapacitorLife(1000, 105);
        double[] hours = {8, 8, 8};
        double[] celsius = {45, 55, 65};
        assertThat(life.equivalentCelsius(hours, celsius)).isCloseTo(57.2, within(0.05));
        assertThat(life.hoursUnder(hours, celsius)).isCloseTo(27_429, within(1.0));
    }
}
