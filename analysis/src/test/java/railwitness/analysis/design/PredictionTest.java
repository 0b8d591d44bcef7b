package railwitness.analysis.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static railwitness.analysis.reference.SimulatedSupply.number;

import java.util.List;
import java.util.Map;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railwitness.analysis.reference.SimulatedSupply;

/** The closed form against a circuit simulation (ngspice) of the same converter. */
class PredictionTest {

    @ParameterizedTest
    @CsvSource({
        "load_010, 40.361",
        "load_025, 39.756",
        "load_050, 38.776",
        "load_075, 37.812",
        "load_100, 36.860",
        "line_10.5, 28.885",
        "line_12.0, 33.380",
        "line_14.4, 40.574"
    })
    void railsFollowTurnsAndResistances(String name, double closedFormVolts) {
        Map<String, String> row = SimulatedSupply.row(name);
        double rail = predicted(row).railVolts().get("plus");
        assertThat(rail).isCloseTo(number(row, "vpos_avg_V"), Percentage.withPercentage(0.2));
        assertThat(rail).isCloseTo(closedFormVolts, Percentage.withPercentage(0.03)); // worked out by hand beside it
    }

    @ParameterizedTest
    @CsvSource({"unbal_100_010", "unbal_010_100"})
    void unequalLoadsSagEachByItsOwn(String name) {
        Map<String, String> row = SimulatedSupply.row(name);
        Prediction predicted = predicted(row);
        assertThat(predicted.railVolts().get("plus"))
                .isCloseTo(
                        number(row, "vpos_avg_V"), Percentage.withPercentage(0.5)); // one diode drop for both currents
        assertThat(predicted.railVolts().get("minus"))
                .isCloseTo(number(row, "vneg_avg_V"), Percentage.withPercentage(0.5));
    }

    @ParameterizedTest
    @CsvSource({"load_025, 0.9", "load_050, 1.2", "load_075, 1.5", "load_100, 1.9"})
    void inputCurrentIsLowByTheSnubbersOnly(String name, double percent) {
        // the sheet knows no snubbers and no body diodes: up to 3.5 W of 319 W
        Map<String, String> row = SimulatedSupply.row(name);
        assertThat(predicted(row).inputAmperes())
                .isCloseTo(number(row, "iin_avg_A"), Percentage.withPercentage(percent))
                .isLessThan(number(row, "iin_avg_A"));
    }

    @ParameterizedTest
    @CsvSource({
        "switches, loss_switch_W, 3",
        "primary winding, loss_winding_pri_W, 3.5",
        "rectifier, loss_diodes_W, 1.5",
        "secondary windings, loss_winding_sec_W, 6",
        "bleeders, loss_bleeder_W, 0.5",
        "core, loss_core_W, 4"
    })
    void lossesByPartAgreeWithTheElements(String part, String column, double percent) {
        for (String name : List.of("load_050", "load_100")) {
            Map<String, String> row = SimulatedSupply.row(name);
            assertThat(predicted(row).lossWatts().get(part))
                    .as(name)
                    .isCloseTo(number(row, column), Percentage.withPercentage(percent));
        }
    }

    @Test
    void rippleFollowsTheCapacitorsResistance() {
        Map<String, String> row = SimulatedSupply.row("load_100");
        assertThat(predicted(row).rippleRmsVolts().get("plus"))
                .isCloseTo(number(row, "ripple_pos_rms_V"), Percentage.withPercentage(7));
    }

    @Test
    void powersBalance() {
        Prediction predicted = predicted(SimulatedSupply.row("unbal_100_010"));
        assertThat(predicted.inputWatts())
                .isCloseTo(predicted.outputWatts() + predicted.totalLossWatts(), within(1e-9));
    }

    @Test
    void elevenTurnsInsteadOfTwelveLowerTheRailInProportion() {
        Map<String, String> row = SimulatedSupply.row("fault_d2_050");
        double rail = Prediction.of(sheetFor(row), Deviation.turns(-1), number(row, "vin_avg_V"), loads(row))
                .orElseThrow()
                .railVolts()
                .get("plus");
        assertThat(rail).isCloseTo(number(row, "vpos_avg_V"), Percentage.withPercentage(0.2));
    }

    @ParameterizedTest
    @CsvSource({"fault_b_025", "fault_b_050", "fault_b_100"})
    void halfASecondaryThatGivesNothingSagsMoreAndDoublesRipple(String name) {
        Map<String, String> row = SimulatedSupply.row(name);
        Prediction predicted = Prediction.of(
                        sheetFor(row),
                        Deviation.missing(new Deviation.HalfSecondary()),
                        number(row, "vin_avg_V"),
                        loads(row))
                .orElseThrow();
        assertThat(predicted.railVolts().get("plus"))
                .isCloseTo(number(row, "vpos_avg_V"), Percentage.withPercentage(0.4));
        assertThat(predicted.rippleRmsVolts().get("plus"))
                .isCloseTo(number(row, "ripple_pos_rms_V"), Percentage.withPercentage(10));
    }

    @Test
    void highestRailIsTurnsRatioTimesHighestInput() {
        assertThat(Prediction.highestNoLoadRailVolts(SimulatedSupply.design()).orElseThrow())
                .isCloseTo(43.2, within(1e-9));
    }

    private static Prediction predicted(Map<String, String> row) {
        return Prediction.of(sheetFor(row), number(row, "vin_avg_V"), loads(row))
                .orElseThrow();
    }

    /** The diode's law at the height of the pulse; the sheet's one drop is meant for one current. */
    private static Design sheetFor(Map<String, String> row) {
        double pulse = 0.8 * Math.max(number(row, "ipos_A"), number(row, "ineg_A"));
        return SimulatedSupply.design(SimulatedSupply.diodeVolts(pulse), List.of());
    }

    private static Map<String, Double> loads(Map<String, String> row) {
        return Map.of("plus", number(row, "ipos_A"), "minus", number(row, "ineg_A"));
    }
}
