package railwitness.analysis.cause;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import railwitness.analysis.design.Design;
import railwitness.analysis.reference.SimulatedSupply;
import railwitness.analysis.supply.Figures;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.PointBuilder;
import railwitness.analysis.supply.Points;
import railwitness.analysis.supply.RippleMeans;
import railwitness.analysis.uncertainty.Estimate;

/** Faults put into a circuit simulation (ngspice) must be told from the outside readings alone. */
@Execution(ExecutionMode.CONCURRENT)
class DiagnosisTest {

    @ParameterizedTest
    @CsvSource({
        "fault_a, shorted-turn",
        "fault_b, weak-half",
        "fault_c, tired-capacitor",
        "fault_c2, tired-capacitor",
        "fault_d, weak-half",
        "fault_d2, wrong-turns"
    })
    void faultIsNamedFirst(String fault, String code) {
        for (double u : new double[] {0, 1e-4, 1e-3}) {
            List<Cause> causes = diagnose(SimulatedSupply.faulty(fault, u));
            assertThat(causes).as(fault + " u " + u).isNotEmpty();
            assertThat(causes.get(0).code().word()).as(fault + " u " + u).isEqualTo(code);
        }
    }

    @Test
    void tiredCapacitorIsNamedWithItsRail() {
        assertThat(diagnose(SimulatedSupply.faulty("fault_c", 1e-4)).get(0).rail())
                .contains("plus");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-4, 1e-3, 3e-3})
    void healthyUnitHasNoCause(double u) {
        assertThat(diagnose(SimulatedSupply.healthy(u))).isEmpty();
    }

    @Test
    void openHalfAndOneTurnShortAreSaidToBeAlike() {
        assertThat(diagnose(SimulatedSupply.faulty("fault_d", 1e-4)).get(0).alike())
                .contains(CauseCode.WRONG_TURNS);
        assertThat(CauseCode.WEAK_HALF.checkNext()).contains("open").contains("turn short");
    }

    @Test
    void currentWithRemoteOffIsASwitch() {
        List<Cause> causes = EarlyEnd.causes(new EarlyEnding("standby", 5, false));
        assertThat(causes).extracting(Cause::code).containsExactly(CauseCode.SHORTED_SWITCH);
    }

    @Test
    void smallCurrentWithRemoteOffIsALeak() {
        List<Cause> causes = EarlyEnd.causes(new EarlyEnding("standby", 0.05, false));
        assertThat(causes).extracting(Cause::code).containsExactly(CauseCode.LEAKY_SWITCH);
    }

    @Test
    void endingUnderLoadSaysNothingOfItself() {
        assertThat(EarlyEnd.speaks(new EarlyEnding("load-sweep", 31, true))).isFalse();
    }

    @Test
    void currentAtOnceWithRemoteOnIsNotToldApart() {
        List<Cause> causes = EarlyEnd.causes(new EarlyEnding("power-up", 5, true));
        assertThat(causes)
                .extracting(Cause::code)
                .contains(CauseCode.SHORTED_RECTIFIER, CauseCode.SHORTED_TURN)
                .doesNotContain(CauseCode.SHORTED_SWITCH);
        assertThat(causes).allSatisfy(cause -> assertThat(cause.alike()).isNotEmpty());
    }

    @Test
    void oneRailThatStaysDownIsItsOwnRectifiersFault() {
        List<Cause> causes = EarlyEnd.causes(new EarlyEnding("power-up", 0.4, true, List.of("plus"), true));
        assertThat(causes)
                .extracting(Cause::code)
                .containsExactly(CauseCode.SHORTED_RECTIFIER, CauseCode.DEAD_RECTIFIER);
        assertThat(causes).allSatisfy(cause -> assertThat(cause.rail()).contains("plus"));
        assertThat(causes.get(0).supports()).singleElement().asString().contains("did not come up: plus");
    }

    @Test
    void noRailAtAllIsTheDriveOrAShort() {
        List<Cause> causes = EarlyEnd.causes(new EarlyEnding("power-up", 0.1, true, List.of("plus", "minus"), false));
        assertThat(causes).extracting(Cause::code).containsExactly(CauseCode.DEAD_DRIVE, CauseCode.SHORTED_RECTIFIER);
    }

    /** Both rails stand: no diode and no rail is shorted, and both sides of the drive work. */
    @Test
    void railsThatStandClearRectifierAndDrive() {
        Evidence stand = new Evidence(Map.of("plus", 40.7, "minus", -40.6), true, true, false);
        List<Cause> causes = EarlyEnd.causes(new EarlyEnding("power-up", 2, true).with(stand));
        assertThat(causes)
                .extracting(Cause::code)
                .containsExactly(CauseCode.SHORTED_TURN, CauseCode.WEAK_CORE, CauseCode.LEAKY_CLAMP);
        assertThat(causes.get(0).supports()).singleElement().asString().contains("plus 40.7 V", "minus -40.6 V");
    }

    /** Hardly anything was lost without load, far more than the parts may lose with it: something shorts only then. */
    @Test
    void aLossThatComesWithTheLoadIsAShortOfTheLowerRail() {
        EarlyEnding lost = EarlyEnding.lostUnderLoad("load-sweep", 150, 17, Map.of("plus", 37.5, "minus", -39.6));
        assertThat(EarlyEnd.speaks(lost)).isTrue();
        assertThat(EarlyEnd.underLoad(lost)).isTrue();
        List<Cause> causes = EarlyEnd.causes(lost);
        assertThat(causes).singleElement().satisfies(cause -> {
            assertThat(cause.code()).isEqualTo(CauseCode.SHORT_UNDER_LOAD);
            assertThat(cause.rail()).contains("plus");
            assertThat(cause.supports()).singleElement().asString().contains("150 W", "plus 37.5 V");
        });
        EarlyEnding alike = EarlyEnding.lostUnderLoad("load-sweep", 150, 17, Map.of("plus", 39.5, "minus", -39.6));
        assertThat(EarlyEnd.causes(alike)).singleElement().satisfies(cause -> assertThat(cause.rail())
                .isEmpty());
    }

    @Test
    void nobodyIsAccusedOfACurrentThatTheSheetDoesNotBound() {
        Evidence unknown = new Evidence(Map.of("plus", 40.7, "minus", -40.6), true, false, false);
        assertThat(EarlyEnd.causes(new EarlyEnding("power-up", 4.6, true).with(unknown)))
                .isEmpty();
        Evidence off = new Evidence(Map.of(), false, false, false);
        assertThat(EarlyEnd.causes(new EarlyEnding("power-up", 0.3, false).with(off)))
                .isEmpty();
    }

    /** At the supply's limit and without a rail it is a short, whatever the sheet knows. */
    @Test
    void aSupplyThatLimitsIsAShortWithoutAnyBound() {
        Evidence limits = new Evidence(Map.of("plus", 0.3, "minus", -0.3), false, false, true);
        assertThat(EarlyEnd.causes(new EarlyEnding("power-up", 5, true, List.of("plus", "minus"), false).with(limits)))
                .extracting(Cause::code)
                .contains(CauseCode.SHORTED_RECTIFIER, CauseCode.SHORTED_TURN);
        assertThat(EarlyEnd.causes(
                        new EarlyEnding("power-up", 5, false).with(new Evidence(Map.of(), false, false, true))))
                .extracting(Cause::code)
                .containsExactly(CauseCode.SHORTED_SWITCH);
    }

    @Test
    void railsThatStandLowAreNoShort() {
        Evidence low = new Evidence(Map.of("plus", 27.0, "minus", -27.0), false, true, false);
        assertThat(EarlyEnd.causes(new EarlyEnding("power-up", 0.3, true, List.of("plus", "minus"), false).with(low)))
                .extracting(Cause::code)
                .containsExactly(CauseCode.WRONG_TURNS, CauseCode.DEAD_DRIVE);
    }

    @Test
    void railThatRisesTooHighWithoutLoadHasOtherTurns() {
        List<Cause> causes = EarlyEnd.causes(EarlyEnding.tooHigh("no-load", 0.4, -45.06));
        assertThat(causes).extracting(Cause::code).containsExactly(CauseCode.WRONG_TURNS);
        assertThat(causes.get(0).supports()).singleElement().asString().contains("rose to 45.06 V without load");
    }

    /** It stood without load and is gone under it: the unit stopped by itself, or something shorts only then. */
    @Test
    void aRailThatIsGoneUnderLoadIsAStopOrAShort() {
        EarlyEnding gone = EarlyEnding.fellUnderLoad("load-sweep", "plus", 0.2);
        assertThat(EarlyEnd.speaks(gone)).isTrue();
        List<Cause> causes = EarlyEnd.causes(gone);
        assertThat(causes).extracting(Cause::code).containsExactly(CauseCode.HICCUP, CauseCode.SHORT_UNDER_LOAD);
        assertThat(causes.get(0).supports()).singleElement().asString().contains("plus rail fell to 0.20 V");
    }

    /** A leak of 3 W that doubles every 10 K, added to the simulator's readings of a unit that warms by 30 K. */
    @Test
    void aLeakThatDoublesWithHeatIsARunawayAndHeatAloneIsNone() {
        assertThat(diagnose(warmed(SimulatedSupply.healthy(1e-3), 0))).isEmpty();
        List<Cause> causes = diagnose(warmed(SimulatedSupply.healthy(1e-3), 3));
        assertThat(causes).isNotEmpty();
        assertThat(causes.get(0).code()).isEqualTo(CauseCode.THERMAL_RUNAWAY);
    }

    private static List<OperatingPoint> warmed(List<OperatingPoint> points, double leakWatts) {
        List<OperatingPoint> warmed = new ArrayList<>();
        for (OperatingPoint point : points) {
            double kelvin = 30.0 * warmed.size() / (points.size() - 1);
            double amperes = leakWatts
                    * Math.pow(2, kelvin / 10)
                    / point.input().voltage().value();
            PointBuilder builder = OperatingPoint.of(point.stage(), point.step())
                    .during(point.fromSeconds(), point.toSeconds())
                    .inputVoltage(point.input().voltage())
                    .inputCurrent(point.input().current().plus(amperes))
                    .temperature("heatsink", Estimate.exact(25 + kelvin));
            point.rails().forEach((name, rail) -> builder.railVoltage(name, rail.voltage())
                    .railCurrent(name, rail.current())
                    .ripple(name, rail.rippleRms().orElseThrow()));
            warmed.add(builder.build());
        }
        return warmed;
    }

    private static List<Cause> diagnose(List<OperatingPoint> measured) {
        Design design = SimulatedSupply.design();
        Points points = new Points(measured, Optional.of(design));
        Figures figures = Figures.of(measured, Optional.of(design), RippleMeans.unknown());
        return Diagnosis.of(points, design, figures, RippleMeans.unknown(), OptionalDouble.of(0.020));
    }
}
