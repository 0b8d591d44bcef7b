package railwitness.analysis.transformer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/** Each measurement by numbers worked out by hand or from textbooks. */
class WoundMeasurementTest {
    private static Estimate exact(double value) {
        return Estimate.exact(value);
    }

    private static Estimate normal(double value, double u) {
        return Estimate.of(value, Influence.normal("reading", u, "1").times(1));
    }

    /** 2 milliohm at 5 A with 30 uV of a warm joint: 10.03 mV and -9.97 mV. One way alone would be 0.3 % off. */
    @Test
    void warmJointsCancelOverBothDirections() {
        Estimate ohms = FourWire.ohms(exact(10.03e-3), exact(5), exact(-9.97e-3), exact(-5));
        assertThat(ohms.value()).isCloseTo(2e-3, within(1e-12));
        assertThat(FourWire.thermalVolts(exact(10.03e-3), exact(5), exact(-9.97e-3), exact(-5))
                        .value())
                .isCloseTo(30e-6, within(1e-12));
        assertThat(10.03e-3 / 5).isNotCloseTo(2e-3, within(5e-6));
    }

    /** Annealed copper, 0.00393 / K (IEC 60028): 1.0393 ohm at 30 degC are 1 ohm at 20 degC. */
    @Test
    void resistanceAtTwentyDegrees() {
        assertThat(FourWire.at20(exact(1.0393), exact(30)).value()).isCloseTo(1, within(1e-12));
        double u = FourWire.at20(exact(1.0393), normal(30, 1)).u();
        assertThat(u).isCloseTo(0.00393 / 1.0393, within(1e-9));
    }

    @Test
    void twoWiresAreRefusedForMilliohms() {
        assertThatThrownBy(() -> FourWire.twoWire(exact(0.002))).hasMessageContaining("with the supply");
        assertThat(FourWire.twoWire(exact(120)).value()).isEqualTo(120);
        assertThatThrownBy(() -> FourWire.ohms(exact(0.01), exact(5), exact(0.01), exact(5)))
                .hasMessageContaining("exchange the supply's leads");
        assertThatThrownBy(() -> FourWire.ohms(exact(-0.01), exact(5), exact(0.01), exact(-5)))
                .hasMessageContaining("below zero");
    }

    /** Step up and down (common practice, no source): 12 V to 20 V is more turns, 12 V to 8 V fewer. */
    @Test
    void ratioOfVoltagesIsRatioOfTurns() {
        assertThat(Ratio.of(exact(20), exact(12)).value()).isGreaterThan(1);
        assertThat(Ratio.of(exact(8), exact(12)).value()).isLessThan(1);
        assertThat(Ratio.turns(exact(1.5), exact(0.125)).value()).isEqualTo(12);
        assertThat(Ratio.mismatch(exact(3.0), exact(2.75)).value()).isCloseTo(0.25 / 2.875, within(1e-12));
    }

    @Test
    void aReversedHalfTakesItsTwinsVoltageAway() {
        Estimate one = normal(1.500, 0.003);
        assertThat(Ratio.polarity(one, normal(1.498, 0.003), normal(2.995, 0.005)))
                .isEqualTo(Ratio.Polarity.ALIKE);
        assertThat(Ratio.polarity(one, normal(1.498, 0.003), normal(0.004, 0.003)))
                .isEqualTo(Ratio.Polarity.OPPOSED);
        assertThat(Ratio.polarity(one, normal(1.498, 0.003), normal(1.5, 0.003)))
                .isEqualTo(Ratio.Polarity.UNCLEAR);
        assertThat(Ratio.polarity(normal(0.004, 0.003), one, one)).isEqualTo(Ratio.Polarity.UNCLEAR);
    }

    /** Textbook triangle 3-4-5: 5 V, 1 A, 3 ohm of it resistance leave 4 ohm, 4 H at 1 rad/s. */
    @Test
    void inductanceFromASine() {
        Estimate henries = Inductance.sine(exact(5), exact(1), exact(1 / (2 * Math.PI)), exact(3));
        assertThat(henries.value()).isCloseTo(4, within(1e-12));
        assertThatThrownBy(() -> Inductance.sine(exact(3), exact(1), exact(50), exact(3)))
                .hasMessageContaining("higher frequency");
    }

    /** Resonance, f = 1 / (2 pi root LC) (textbooks): 100 uH and 1 uF ring at 15 915.5 Hz. */
    @Test
    void inductanceFromRinging() {
        assertThat(Inductance.ringing(exact(15_915.494), exact(1e-6)).value()).isCloseTo(100e-6, within(1e-11));
        double relative =
                Inductance.ringing(normal(15_915.494, 159.15494), exact(1e-6)).u() / 100e-6;
        assertThat(relative).isCloseTo(0.02, within(1e-6));
    }

    /** 12 V for 10 us over 1.5 A are 80 uH. */
    @Test
    void inductanceFromARamp() {
        assertThat(Inductance.ramp(exact(12), exact(10e-6), exact(1.5)).value()).isCloseTo(80e-6, within(1e-15));
    }

    /** Cooling with a time constant of 120 s from 1.30 to 1.00: readings at 20, 40, 60 s lead back to 1.30. */
    @Test
    void hotResistanceLeadsBackToSwitchingOff() {
        List<SwitchOff.Reading> readings = java.util.stream.IntStream.of(20, 40, 60)
                .mapToObj(s -> new SwitchOff.Reading(s, exact(1 + 0.3 * Math.exp(-s / 120.0))))
                .toList();
        assertThat(SwitchOff.ohms(exact(1), readings).value()).isCloseTo(1.3, within(1e-9));
        assertThat(readings.get(0).ohms().value()).isLessThan(1.26);
        assertThatThrownBy(() -> SwitchOff.ohms(exact(1), readings.subList(0, 2)))
                .hasMessageContaining("three");
    }

    /** Gupta, Network Analysis, example 1-3 (as printed in a public copy): 1.3 ohm at 30 degC, 1.6 ohm at 91 degC. */
    @Test
    void temperatureFromResistance() {
        assertThat(SwitchOff.degC(exact(1.3), exact(30), exact(1.6)).value()).isCloseTo(91.05, within(0.05));
        double step = 1e-6;
        double slope = (SwitchOff.degC(exact(1.3 + step), exact(30), exact(1.6)).value()
                        - SwitchOff.degC(exact(1.3), exact(30), exact(1.6)).value())
                / step;
        assertThat(SwitchOff.degC(normal(1.3, 0.01), exact(30), exact(1.6)).u())
                .isCloseTo(Math.abs(slope) * 0.01, within(1e-4));
    }

    /** Two lines that meet at 20.1 V; the flat part 8 mA/V, the steep one 0.2 A/V. */
    @Test
    void theKneeIsWhereTwoLinesMeet() {
        List<Knee.Point> points = java.util.stream.IntStream.rangeClosed(16, 44)
                .mapToObj(half -> half / 2.0)
                .map(v -> new Knee.Point(v, 0.24 + 0.008 * v + 0.2 * Math.max(0, v - 20.1)))
                .toList();
        Knee knee = Knee.find(points).orElseThrow();
        assertThat(knee.volts()).isCloseTo(20.1, within(0.01));
        assertThat(knee.slopeBefore()).isCloseTo(0.008, within(1e-3));
        assertThat(knee.slopeBeyond()).isCloseTo(0.208, within(2e-3));
    }

    @Test
    void aStraightCourseHasNoKnee() {
        List<Knee.Point> points = java.util.stream.IntStream.rangeClosed(8, 22)
                .mapToObj(v -> new Knee.Point(v, 0.24 + 0.008 * v + 1e-4 * Math.sin(7.0 * v)))
                .toList();
        assertThat(Knee.find(points)).isEmpty();
        assertThatThrownBy(() -> Knee.find(points.subList(0, 6))).hasMessageContaining("at least 7");
    }
}
