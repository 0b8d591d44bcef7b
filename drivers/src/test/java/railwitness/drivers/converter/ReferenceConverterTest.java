package railwitness.drivers.converter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Source of all values: circuit simulation of a reference converter, ngspice tables. */
class ReferenceConverterTest {
    private static final ReferenceTable TABLE = ReferenceTable.read();

    @ParameterizedTest
    @ValueSource(
            strings = {
                "load_000",
                "load_010",
                "load_025",
                "load_050",
                "load_075",
                "load_100",
                "line_10.5",
                "line_11.0",
                "line_12.0",
                "line_12.6",
                "line_14.4",
                "unbal_100_010",
                "unbal_010_100"
            })
    void meansAgreeWithTheCircuitSimulation(String row) {
        Balance state = TABLE.solve(ReferenceTable.specimen(), row);
        assertThat(state.terminalVolts()).isCloseTo(TABLE.value(row, "vin_avg_V"), withinPercentage(0.1));
        assertThat(state.rail("plus").volts()).isCloseTo(TABLE.value(row, "vpos_avg_V"), withinPercentage(0.5));
        assertThat(state.rail("minus").volts()).isCloseTo(TABLE.value(row, "vneg_avg_V"), withinPercentage(0.5));
        assertThat(state.inputWatts()).isCloseTo(TABLE.value(row, "pin_W"), withinPercentage(1));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "load_025",
                "load_050",
                "load_075",
                "load_100",
                "line_10.5",
                "line_11.0",
                "line_12.0",
                "line_12.6",
                "line_14.4",
                "unbal_100_010"
            })
    void rippleOfTheLoadedPlusRailAgreesWithTheCircuitSimulation(String row) {
        Ripple ripple = TABLE.solve(ReferenceTable.specimen(), row).rail("plus").ripple();
        assertThat(ripple.peakToPeakVolts()).isCloseTo(TABLE.value(row, "ripple_pos_pp_V"), withinPercentage(15));
        assertThat(ripple.rmsVolts()).isCloseTo(TABLE.value(row, "ripple_pos_rms_V"), withinPercentage(15));
        assertThat(ripple.amplitudeVolts(2)).isCloseTo(TABLE.value(row, "ripple_pos_50k_amp_V"), withinPercentage(15));
    }

    @Test
    void aTurnClosedByAQuarterOhmAddsAboutFortyWatts() {
        Specimen faulty = Fault.of("shorted-turn=0.25").in(ReferenceTable.specimen());
        Balance state = TABLE.solve(faulty, "fault_a_000");
        assertThat(state.inputWatts()).isCloseTo(TABLE.value("fault_a_000", "pin_W"), withinPercentage(2));
        double added = state.inputWatts()
                - TABLE.solve(ReferenceTable.specimen(), "load_000").inputWatts();
        assertThat(added).isBetween(38.0, 45.0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"fault_a_050", "fault_a_100"})
    void aShortedTurnAgreesUnderLoad(String row) {
        agrees(TABLE.solve(Fault.of("shorted-turn=0.25").in(ReferenceTable.specimen()), row), row, 0.5, 1.5);
    }

    @ParameterizedTest
    @ValueSource(strings = {"fault_b_000", "fault_b_025", "fault_b_050", "fault_b_100"})
    void anOpenSecondaryHalfAgrees(String row) {
        Balance state = TABLE.solve(Fault.of("weak-half").in(ReferenceTable.specimen()), row);
        agrees(state, row, 0.5, 1.5);
    }

    @ParameterizedTest
    @ValueSource(strings = {"fault_b_025", "fault_b_050", "fault_b_100"})
    void anOpenSecondaryHalfLeavesRippleAtTheCyclesOwnFrequency(String row) {
        Ripple ripple = TABLE.solve(Fault.of("weak-half").in(ReferenceTable.specimen()), row)
                .rail("plus")
                .ripple();
        assertThat(ripple.rmsVolts()).isCloseTo(TABLE.value(row, "ripple_pos_rms_V"), withinPercentage(15));
        assertThat(ripple.amplitudeVolts(1)).isCloseTo(TABLE.value(row, "ripple_pos_25k_amp_V"), withinPercentage(15));
    }

    @ParameterizedTest
    @ValueSource(strings = {"fault_c2_050", "fault_c2_075", "fault_c2_100"})
    void tiredCapacitorsAgreeAndMoveNoMean(String row) {
        Balance state = TABLE.solve(Fault.of("tired-capacitor@plus=10").in(ReferenceTable.specimen()), row);
        agrees(state, row, 0.5, 1);
        assertThat(state.rail("plus").ripple().rmsVolts())
                .isCloseTo(TABLE.value(row, "ripple_pos_rms_V"), withinPercentage(15));
    }

    @ParameterizedTest
    @ValueSource(strings = {"fault_d_000", "fault_d_025", "fault_d_050", "fault_d_100"})
    void aTurnFewerOnOneHalfAgrees(String row) {
        agrees(TABLE.solve(Fault.of("wrong-turns@half-2=1").in(ReferenceTable.specimen()), row), row, 0.6, 1.5);
    }

    @ParameterizedTest
    @ValueSource(strings = {"fault_d2_000", "fault_d2_010", "fault_d2_050", "fault_d2_100"})
    void aTurnFewerOnBothHalvesAgrees(String row) {
        agrees(TABLE.solve(Fault.of("wrong-turns=1").in(ReferenceTable.specimen()), row), row, 0.5, 1);
    }

    private static void agrees(Balance state, String row, double railPercent, double powerPercent) {
        assertThat(state.rail("plus").volts()).isCloseTo(TABLE.value(row, "vpos_avg_V"), withinPercentage(railPercent));
        assertThat(state.rail("minus").volts())
                .isCloseTo(TABLE.value(row, "vneg_avg_V"), withinPercentage(railPercent));
        assertThat(state.inputWatts()).isCloseTo(TABLE.value(row, "pin_W"), withinPercentage(powerPercent));
    }
}
