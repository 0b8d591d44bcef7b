package railwitness.analysis.converter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import railwitness.analysis.expected.SheetParts;
import railwitness.analysis.reference.SimulatedSupply;

/** The forward model against full transient runs of a circuit simulator (ngspice), sound and with faults put into parts. */
class ConverterTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "load_010",
                "load_025",
                "load_050",
                "load_075",
                "load_100",
                "line_10.5",
                "line_12.0",
                "line_14.4",
                "unbal_100_010",
                "unbal_010_100"
            })
    void railsAreWithinHalfAPercent(String name) {
        Map<String, String> row = SimulatedSupply.row(name);
        Result result = at(sheet(), row);
        assertThat(result.volts()[0])
                .isCloseTo(SimulatedSupply.number(row, "vpos_avg_V"), Percentage.withPercentage(0.6));
        assertThat(-result.volts()[1])
                .isCloseTo(SimulatedSupply.number(row, "vneg_avg_V"), Percentage.withPercentage(0.6));
    }

    @ParameterizedTest
    @CsvSource({"load_025, 1.5", "load_050, 1", "load_075, 1", "load_100, 1"})
    void inputCurrentIsWithinAPercent(String name, double percent) {
        Map<String, String> row = SimulatedSupply.row(name);
        assertThat(at(sheet(), row).inputAmperes())
                .isCloseTo(SimulatedSupply.number(row, "iin_avg_A"), Percentage.withPercentage(percent));
    }

    @ParameterizedTest
    @CsvSource({"fault_b_025", "fault_b_050", "fault_b_100"})
    void openHalfSagsMoreAndDoublesRipple(String name) {
        Map<String, String> row = SimulatedSupply.row(name);
        Result result = at(sheet().with(Part.HALF_2_OHMS, Parts.OPEN), row);
        assertThat(result.volts()[0])
                .isCloseTo(SimulatedSupply.number(row, "vpos_avg_V"), Percentage.withPercentage(0.8));
        assertThat(result.rippleVolts()[0])
                .isCloseTo(SimulatedSupply.number(row, "ripple_pos_rms_V"), Percentage.withPercentage(12));
    }

    @Test
    void turnFewerOnOneHalfHardlyConductsAndIsAsGoodAsOpen() {
        Map<String, String> row = SimulatedSupply.row("fault_d_100");
        Result fewer = at(sheet().with(Part.HALF_2, 11.0 / 12), row);
        Result open = at(sheet().with(Part.HALF_2_OHMS, Parts.OPEN), row);
        assertThat(fewer.volts()[0]).isCloseTo(open.volts()[0], Percentage.withPercentage(1));
        assertThat(fewer.volts()[0]).isCloseTo(SimulatedSupply.number(row, "vpos_avg_V"), Percentage.withPercentage(1));
    }

    @Test
    void elevenTurnsLowerTheRailInProportion() {
        Map<String, String> row = SimulatedSupply.row("fault_d2_050");
        Result result = at(sheet().with(Part.HALF_1, 11.0 / 12).with(Part.HALF_2, 11.0 / 12), row);
        assertThat(result.volts()[0])
                .isCloseTo(SimulatedSupply.number(row, "vpos_avg_V"), Percentage.withPercentage(0.6));
    }

    @Test
    void railWithoutLoadIsWithinThreePercent() {
        Map<String, String> row = SimulatedSupply.row("load_000");
        assertThat(at(sheet(), row).volts()[0])
                .isCloseTo(SimulatedSupply.number(row, "vpos_avg_V"), Percentage.withPercentage(3));
    }

    @Test
    void powersBalance() {
        Result result = at(sheet(), SimulatedSupply.row("unbal_100_010"));
        double losses = result.lossWatts().values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
        double input =
                SimulatedSupply.number(SimulatedSupply.row("unbal_100_010"), "vin_avg_V") * result.inputAmperes();
        assertThat(input).isCloseTo(result.outputWatts() + losses, within(1e-9));
    }

    @Test
    void aStartNearbyLeadsToTheSamePlace() {
        double[] loads = {4, 1};
        Result cold = Converter.at(sheet(), 13.5, loads);
        Result warm = Converter.near(Converter.at(sheet(), 12.5, new double[] {1, 3}), sheet(), 13.5, loads);
        assertThat(warm.volts()[0]).isCloseTo(cold.volts()[0], within(2e-3));
        assertThat(warm.volts()[1]).isCloseTo(cold.volts()[1], within(2e-3));
    }

    @Test
    void commutationThroughTheLeakageCostsTwoFLForEachAmpere() {
        // textbook overlap of commutation; here for ideal parts: 2 * 50 kHz * 1 uH = 0.1 V for each ampere
        Parts ideal = choke().with(Part.LEAKAGE_PER_SQUARED_RATIO, 1e-6 / 9);
        double without = Converter.at(choke(), 12, new double[] {4}).volts()[0];
        assertThat(without).isCloseTo(3 * 12 * 0.8, within(1e-6));
        assertThat(without - Converter.at(ideal, 12, new double[] {4}).volts()[0])
                .isCloseTo(0.4, within(1e-6));
    }

    @Test
    void regulatedUnitRunsAtTheDutyThatHoldsTheRail() {
        Parts held = choke().with(Part.HELD_VOLTS, 20);
        Result result = Converter.at(held, 12, new double[] {4});
        assertThat(result.volts()[0]).isCloseTo(20, within(1e-3));
        assertThat(result.duty()).isCloseTo(20 / 36.0 / 2, within(1e-4));
        Result free = Converter.at(choke(), 12, new double[] {4});
        assertThat(result.rippleVolts()[0]).as("choke swings more").isGreaterThan(1.2 * free.rippleVolts()[0]);
    }

    @Test
    void regulatedUnitFallsBelowWhatItHoldsWhenTheInputIsTooLow() {
        Result result = Converter.at(choke().with(Part.HELD_VOLTS, 20), 7, new double[] {4});
        assertThat(result.duty()).isCloseTo(0.4, within(1e-6));
        assertThat(result.volts()[0]).isCloseTo(7 * 3 * 0.8, within(1e-6));
    }

    @Test
    void chokeRailWithADeadDiodeCollapsesUnderLoad() {
        // the other half's negative pulse empties the choke: no mean is left in continuous conduction
        Result result = Converter.at(choke().with(Part.DIODE_2_OHMS, 0, Parts.OPEN), 12, new double[] {4});
        assertThat(result.volts()[0]).isLessThan(10);
    }

    private static Parts sheet() {
        // its diodes' drop at 0.1 A
        return SheetParts.of(SimulatedSupply.design(SimulatedSupply.diodeVolts(0.1), List.of()))
                .parts();
    }

    private static Result at(Parts parts, Map<String, String> row) {
        return Converter.at(parts, SimulatedSupply.number(row, "vin_avg_V"), new double[] {
            SimulatedSupply.number(row, "ipos_A"), SimulatedSupply.number(row, "ineg_A")
        });
    }

    /** One rail, all ideal: ratio 3, both duties 0.8, 50 kHz, 100 uH. */
    private static Parts choke() {
        return Parts.blank(true, List.of("plus"), new boolean[] {false})
                .with(Part.NOMINAL_INPUT, 12)
                .with(Part.FREQUENCY, 50e3)
                .with(Part.DUTY, 0.4)
                .with(Part.RATIO, 3)
                .with(Part.CHOKE, 100e-6)
                .with(Part.CAPACITOR, 100e-6);
    }
}
