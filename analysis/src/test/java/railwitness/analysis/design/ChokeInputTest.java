package railwitness.analysis.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class ChokeInputTest {
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();
    private static final OptionalDouble NONE = OptionalDouble.of(0);

    @Test
    void hartsPushPullGivesNineVolts() {
        // Hart, Power Electronics, push-pull example, from memory: 30 V, Np/Ns 2, duty 0.3, 0.5 mH, 6 ohm, 10 kHz: 9.0
        // V
        double volts = sheet(30, 2, 1, 0.3, 10_000, 500, 1.5).at(30, 1.5);
        assertThat(volts).isCloseTo(9.0, within(1e-6));
    }

    @Test
    void hartsRippleOfTheChokeReachesTheCapacitor() {
        // same example, from memory: choke current 0.36 A peak to peak, ripple 0.5 % peak to peak at 50 uF
        double ripple = sheet(30, 2, 1, 0.3, 10_000, 500, 1.5).ripple(30, 1.5);
        double sineOfTriangle = 0.005 * 9 / (2 * Math.sqrt(2));
        assertThat(ripple).isCloseTo(sineOfTriangle, Percentage.withPercentage(6));
    }

    @Test
    void rashidsFilterLeavesItsTwentyMillivolts() {
        // Rashid, Power Electronics, 5.5: 12 V to 5 V at 25 kHz, 145.83 uH, 200 uF: 0.8 A and 20 mV peak to peak.
        // Pulses at
        // 25 kHz are a full cycle of 12.5 kHz here; nearly a sine, so rms times 2 root 2 is its peak to peak.
        Design design = design(12, 1, 1, 0.41667 / 2, 12_500, 145.83, 1, false, 200);
        assertThat(rail(design, 12, 1)).isCloseTo(5, within(0.01));
        double ripple = Prediction.of(design, 12, Map.of("plus", 1.0))
                .orElseThrow()
                .rippleRmsVolts()
                .get("plus");
        assertThat(ripple * 2 * Math.sqrt(2)).isCloseTo(0.020, Percentage.withPercentage(5));
    }

    @Test
    void homeBuiltRatioTwoIdealDuty() {
        // a published home-built 12 V step-up, ratio 2, 12 to 20 V: both duties 0.83, recomputed from its inputs
        assertThat(sheet(12, 5, 10, 0.8333 / 2, 50_000, 100, 4).at(12, 4)).isCloseTo(20, within(0.01));
    }

    @Test
    void withoutLoadTheChokeRunsEmptyAndTheRailRisesToThePeak() {
        Sheet sheet = sheet(12, 4, 12, 0.3, 25_000, 100, 4);
        assertThat(sheet.at(12, 0)).isCloseTo(36, within(1e-9));
        assertThat(sheet.at(12, 0.1)).isBetween(21.6, 36.0);
        assertThat(sheet.at(12, 4)).isCloseTo(21.6, within(1e-6));
    }

    @Test
    void emptyChokeMeetsFullOneWithoutAStep() {
        Sheet sheet = sheet(12, 4, 12, 0.3, 25_000, 100, 4);
        double boundary = 21.6 * 0.4 * 20e-6 / 100e-6 / 2;
        assertThat(sheet.at(12, boundary * 0.999)).isCloseTo(sheet.at(12, boundary * 1.001), within(0.02));
    }

    @Test
    void regulatedUnitHoldsItsNominalUntilItCannot() {
        Design design = design(12, 5, 10, 0.45, 50_000, 100, 4, true);
        assertThat(rail(design, 12, 4)).isEqualTo(20);
        assertThat(rail(design, 10, 4)).isLessThan(20);
    }

    private static Sheet sheet(
            double volts, int primary, int secondary, double duty, double hertz, double microhenries, double amperes) {
        return new Sheet(design(volts, primary, secondary, duty, hertz, microhenries, amperes, false));
    }

    private record Sheet(Design design) {
        double at(double inputVolts, double amperes) {
            return rail(design, inputVolts, amperes);
        }

        double ripple(double inputVolts, double amperes) {
            return Prediction.of(design, inputVolts, Map.of("plus", amperes))
                    .orElseThrow()
                    .rippleRmsVolts()
                    .get("plus");
        }
    }

    private static double rail(Design design, double inputVolts, double amperes) {
        return Prediction.of(design, inputVolts, Map.of("plus", amperes))
                .orElseThrow()
                .railVolts()
                .get("plus");
    }

    private static Design design(
            double volts,
            int primary,
            int secondary,
            double duty,
            double hertz,
            double microhenries,
            double amperes,
            boolean regulated) {
        return design(volts, primary, secondary, duty, hertz, microhenries, amperes, regulated, 50);
    }

    private static Design design(
            double volts,
            int primary,
            int secondary,
            double duty,
            double hertz,
            double microhenries,
            double amperes,
            boolean regulated,
            double microfarads) {
        return new Design(
                new Unit("choke input", Optional.empty(), Optional.empty(), Optional.empty()),
                new Converter(
                        FilterInput.CHOKE,
                        regulated,
                        OptionalDouble.of(hertz),
                        OptionalDouble.of(duty),
                        UNKNOWN,
                        UNKNOWN),
                Input.of(volts),
                Optional.of(new Transformer(
                        primary, secondary, NONE, NONE, UNKNOWN, UNKNOWN, UNKNOWN, NONE, NONE)), // ideal parts
                Optional.of(new Switches(NONE, UNKNOWN, NONE)),
                Optional.of(new Rectifier(NONE, NONE, UNKNOWN)),
                Optional.of(new Filter(
                        OptionalDouble.of(microfarads),
                        NONE,
                        UNKNOWN,
                        UNKNOWN,
                        OptionalDouble.of(microhenries),
                        UNKNOWN)),
                List.of(new Rail("plus", 20, OptionalDouble.of(amperes))),
                List.of(),
                UnitLimits.none(),
                ColdResistance.none(),
                Decision.GUARD_BAND_U,
                List.of());
    }
}
