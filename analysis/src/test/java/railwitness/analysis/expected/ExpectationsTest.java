package railwitness.analysis.expected;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Converter;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Input;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.design.Unit;
import railwitness.analysis.reference.SimulatedSupply;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;

/** Measured beside expected, for sheets that know all, little and nearly nothing. */
class ExpectationsTest {

    @Test
    void soundSupplyOfTheSimulatorHasNothingOff() {
        List<OperatingPoint> points = SimulatedSupply.healthy(1e-3);
        for (Design design : List.of(SimulatedSupply.design(), turnsOnly(), nominalOnly())) {
            assertThat(Deviations.of(points, Expectations.of(design, points))).isEmpty();
        }
    }

    @Test
    void fullSheetBoundsEveryQuantityUnderLoad() {
        List<OperatingPoint> points = List.of(point("load_100"));
        Expected expected = Expectations.of(SimulatedSupply.design(), points).at(points.get(0));
        assertThat(expected.values().keySet())
                .containsExactlyInAnyOrder(
                        "input.current",
                        "plus.voltage",
                        "minus.voltage",
                        "plus.ripple",
                        "minus.ripple",
                        "loss",
                        "efficiency");
        Estimate rail = expected.value("minus.voltage").orElseThrow();
        assertThat(rail.value()).isNegative();
        assertThat(rail.u()).isBetween(0.001 * 37, 0.02 * 37);
    }

    @Test
    void aPartLeftOutWidensTheExpectationAndIsNamedInItsBudget() {
        List<OperatingPoint> points = List.of(point("load_100"));
        Estimate known = Expectations.of(SimulatedSupply.design(), points)
                .at(points.get(0))
                .value("plus.voltage")
                .orElseThrow();
        Estimate unknown = Expectations.of(turnsOnly(), points)
                .at(points.get(0))
                .value("plus.voltage")
                .orElseThrow();
        assertThat(unknown.u()).isGreaterThan(2 * known.u());
        assertThat(known.contributions()).extracting("name").contains("switches' resistance (usual tolerance)");
        assertThat(unknown.contributions()).extracting("name").contains("switches' resistance (not on the sheet)");
    }

    @Test
    void whatTheSheetCannotBoundHasNoExpectation() {
        List<OperatingPoint> points = List.of(point("load_100"));
        assertThat(Expectations.of(turnsOnly(), points).at(points.get(0)).values())
                .doesNotContainKeys("plus.ripple", "minus.ripple")
                .containsKey("plus.voltage");
    }

    @Test
    void unitThatIsOffHasNoExpectation() {
        OperatingPoint standby = OperatingPoint.of("standby", "off")
                .inputVoltage(Estimate.exact(13.8))
                .inputCurrent(Estimate.exact(0.002))
                .railVoltage("plus", Estimate.exact(0))
                .railVoltage("minus", Estimate.exact(0))
                .build();
        assertThat(Expectations.of(SimulatedSupply.design(), List.of(standby))
                        .at(standby)
                        .values())
                .isEmpty();
    }

    @Test
    void railsThatCollapsedAreTheLargestDeviationOnAnySheet() {
        OperatingPoint collapsed = OperatingPoint.of("load-sweep", "100 %")
                .inputVoltage(Estimate.exact(13.4))
                .inputCurrent(Estimate.exact(20))
                .railVoltage("plus", Estimate.exact(14.7))
                .railVoltage("minus", Estimate.exact(-14.9))
                .railCurrent("plus", Estimate.exact(4))
                .railCurrent("minus", Estimate.exact(4))
                .build();
        List<OperatingPoint> points = List.of(collapsed);
        for (Design design : List.of(SimulatedSupply.design(), turnsOnly(), nominalOnly())) {
            List<Deviation> deviations = Deviations.of(points, Expectations.of(design, points));
            assertThat(deviations.stream().filter(one -> one.what().equals("voltage")))
                    .hasSize(2)
                    .allSatisfy(one -> assertThat(one.relative()).isLessThan(-0.5));
        }
    }

    @Test
    void ripplesOfTheRailsAreHeldAgainstEachOtherWithoutAnySheetOfCapacitors() {
        List<OperatingPoint> points = SimulatedSupply.faulty("fault_c", 1e-3);
        List<Deviation> deviations = Deviations.of(points, Expectations.of(nominalOnly(), points));
        assertThat(deviations).isNotEmpty().allSatisfy(one -> {
            assertThat(one.what()).isEqualTo("ripple");
            assertThat(one.rail()).contains("plus");
        });
    }

    @Test
    void shortedTurnIsSeenInLossAndInputCurrent() {
        List<OperatingPoint> points = SimulatedSupply.faulty("fault_a", 1e-3);
        List<Deviation> deviations = Deviations.of(points, Expectations.of(SimulatedSupply.design(), points));
        assertThat(deviations.get(0).what()).isIn("loss", "input.current", "efficiency");
        assertThat(deviations).extracting(Deviation::what).contains("loss", "input.current");
    }

    @Test
    void minimalSheetExpectsItsNominalRail() {
        List<OperatingPoint> points = List.of(point("load_050"));
        Estimate rail = Expectations.of(nominalOnly(), points)
                .at(points.get(0))
                .value("plus.voltage")
                .orElseThrow();
        assertThat(rail.value()).isCloseTo(36.9, Percentage.withPercentage(5));
        assertThat(rail.u() / rail.value()).isBetween(0.03, 0.15);
    }

    private static OperatingPoint point(String name) {
        Map<String, String> row = SimulatedSupply.row(name);
        return SimulatedSupply.point(row, "load-sweep", 0, 1e-3);
    }

    private static Design turnsOnly() {
        return Design.of(
                unit(),
                Converter.unregulated(FilterInput.CAPACITOR),
                Input.of(13.8),
                Transformer.of(4, 12),
                List.of(rail("plus", 36.9), rail("minus", -36.9)));
    }

    private static Design nominalOnly() {
        Design turns = turnsOnly();
        return new Design(
                turns.unit(),
                turns.converter(),
                turns.input(),
                Optional.empty(),
                turns.switches(),
                turns.rectifier(),
                turns.filter(),
                turns.rails(),
                turns.connected(),
                turns.limits(),
                turns.coldResistance(),
                turns.decision(),
                turns.requirements());
    }

    private static Rail rail(String name, double nominal) {
        return new Rail(name, nominal, OptionalDouble.of(4));
    }

    private static Unit unit() {
        return new Unit("supply", Optional.empty(), Optional.empty(), Optional.empty());
    }
}
