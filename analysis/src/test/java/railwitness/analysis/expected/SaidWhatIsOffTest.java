package railwitness.analysis.expected;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.reference.ReferenceSet;
import railwitness.analysis.reference.ReferenceSheet.Knowledge;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.OperatingPoint;

/**
 * Recordings of the circuit simulator: whatever lies far from the sound unit that the simulator makes of the same sheet is
 * said to be off. That nothing is said of sound units is a law in {@code OutsideTheSheetTest}.
 */
@Execution(ExecutionMode.CONCURRENT)
class SaidWhatIsOffTest {
    /** Beyond what parts' usual tolerances do to a rail under load (8 % windings, 12 % switches: 1 to 3 % of it). */
    private static final double RAIL = 0.06;

    /** Beyond what they do to the loss (about 10 %), and far beyond the meters' 0.2 %. */
    private static final double LOSS = 0.5;

    /** Twice the series resistance of a capacitor, and more. */
    private static final double RIPPLE = 0.9;

    private static List<ReferenceSet.Unit> units() {
        return ReferenceSet.half("building", 1e-3);
    }

    private static List<Deviation> said(ReferenceSet.Unit unit, Knowledge known) {
        return Deviations.of(unit.points(), Expectations.of(ReferenceSet.design(unit, known), unit.points()));
    }

    private static boolean farOff(ReferenceSet.Unit unit) {
        ReferenceSet.Unit sound = units().stream()
                .filter(one ->
                        one.design().equals(unit.design()) && one.toString().endsWith("sound exact"))
                .findFirst()
                .orElseThrow();
        return unit.points().stream().anyMatch(point -> sound.points().stream()
                .filter(one -> one.step().equals(point.step()))
                .filter(one -> one.rails().get("plus").current().value() > 0)
                .findFirst()
                .map(one -> farOff(point, one))
                .orElse(false));
    }

    private static boolean farOff(OperatingPoint point, OperatingPoint sound) {
        return List.of("plus", "minus").stream()
                        .anyMatch(rail -> apart(point, sound, at -> at.rails()
                                                .get(rail)
                                                .voltage()
                                                .abs()
                                                .value())
                                        > RAIL
                                || apart(point, sound, at -> at.rails()
                                                .get(rail)
                                                .rippleRms()
                                                .orElseThrow()
                                                .value())
                                        > RIPPLE)
                || apart(point, sound, at -> at.loss().value()) > LOSS;
    }

    private static double apart(OperatingPoint one, OperatingPoint other, ToDoubleFunction<OperatingPoint> what) {
        return Math.abs(Math.log(what.applyAsDouble(one) / what.applyAsDouble(other)));
    }

    @Test
    void whatIsFarFromTheSoundUnitIsSaidWithAFullSheet() {
        List<ReferenceSet.Unit> off =
                units().stream().filter(SaidWhatIsOffTest::farOff).toList();
        assertThat(off).hasSizeGreaterThan(10);
        assertThat(off).allSatisfy(unit -> assertThat(said(unit, Knowledge.FULL))
                .as(unit.toString())
                .isNotEmpty());
    }

    /** What all points share cancels in the difference of two of them, expected as measured. */
    @Test
    void expectedLoadEffectIsSurerThanTheRailsItIsMadeOf() {
        ReferenceSet.Unit unit = units().stream()
                .filter(one -> one.design().equals("wharf") && one.toString().endsWith("sound exact"))
                .findFirst()
                .orElseThrow();
        Design design = ReferenceSet.design(unit, Knowledge.FULL);
        List<Figure> figures = ExpectedFigures.of(design, unit.points(), Expectations.of(design, unit.points()));
        Figure balance = of(figures, FigureName.RAIL_BALANCE, Optional.empty());
        Figure rail = of(figures, FigureName.RAIL_VOLTAGE_AS_WIRED, Optional.of("plus"));
        assertThat(balance.value().u()).isLessThan(rail.value().u());
        assertThat(rail.value().value())
                .isCloseTo(
                        unit.points().stream()
                                .filter(point -> point.step().equals("100 %"))
                                .findFirst()
                                .orElseThrow()
                                .rails()
                                .get("plus")
                                .voltage()
                                .value(),
                        org.assertj.core.api.Assertions.within(3 * rail.value().u()));
    }

    private static Figure of(List<Figure> figures, FigureName name, Optional<String> rail) {
        return figures.stream()
                .filter(figure -> figure.name() == name && figure.rail().equals(rail))
                .findFirst()
                .orElseThrow();
    }
}
