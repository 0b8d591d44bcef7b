package railwitness.analysis.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.reference.SimulatedSupply;
import railwitness.analysis.uncertainty.Estimate;

/**
 * One reference for all that is held: nominal input at the unit's own terminals. A unit made up of a slope of 3 and a
 * resistance of 0.6 ohm on each rail gives by hand what it would give there.
 */
class HeldFiguresTest {
    private static final double SLOPE = 3;
    private static final double OHMS = 0.6;
    private static final double PER_OTHER = 0.1;
    private static final Design DESIGN = SimulatedSupply.design();
    private static final double NOMINAL = DESIGN.input().nominalVolts();
    private static final double FULL = DESIGN.rails().get(0).fullLoadAmperes().orElseThrow();

    /** Rail by hand: slope times terminals, less own and the other's load. */
    private static double rail(double terminals, double own, double other) {
        return SLOPE * terminals - OHMS * own - PER_OTHER * other;
    }

    private static OperatingPoint point(
            String stage, String step, double seconds, double terminals, double plus, double minus) {
        return OperatingPoint.of(stage, step)
                .during(seconds, seconds + 1)
                .inputVoltage(Estimate.exact(terminals), InputSource.TERMINALS)
                .inputCurrent(Estimate.exact(1 + 3 * (plus + minus)))
                .railVoltage("plus", Estimate.exact(rail(terminals, plus, minus)))
                .railCurrent("plus", Estimate.exact(plus))
                .railVoltage("minus", Estimate.exact(-rail(terminals, minus, plus) + 0.05))
                .railCurrent("minus", Estimate.exact(minus))
                .build();
    }

    /** Leads drop 0.02 V for each ampere of both loads together; a servo would leave none. */
    private static List<OperatingPoint> session(double dropped, boolean lineSweep) {
        double low = 0.1 * FULL;
        double half = FULL / 2;
        Stream<OperatingPoint> load = Stream.of(
                point("no-load", "0 %", 0, NOMINAL, 0, 0),
                point("load-sweep", "50 %", 10, NOMINAL - dropped * 2 * half, half, half),
                point("load-sweep", "100 %", 20, NOMINAL - dropped * 2 * FULL, FULL, FULL),
                point("cross-load", "all 10 %", 50, NOMINAL - dropped * 2 * low, low, low),
                point("cross-load", "minus 100 %", 60, NOMINAL - dropped * (FULL + low), low, FULL));
        Stream<OperatingPoint> line = Stream.of(
                point("line-sweep", "low", 30, NOMINAL - 2.5, half, half),
                point("line-sweep", "high", 40, NOMINAL + 0.6, half, half));
        return (lineSweep ? Stream.concat(load, line) : load).toList();
    }

    private static double value(List<OperatingPoint> points, FigureName name, String rail) {
        return figure(points, name, Optional.ofNullable(rail))
                .orElseThrow()
                .value()
                .value();
    }

    private static Optional<Figure> figure(List<OperatingPoint> points, FigureName name, Optional<String> rail) {
        return Figures.of(points, Optional.of(DESIGN), RippleMeans.unknown()).find(name, rail);
    }

    @Test
    void heldFiguresAreThoseOfNominalInputWhateverTheLeadsDrop() {
        for (double dropped : new double[] {0, 0.02, 0.06}) {
            List<OperatingPoint> points = session(dropped, true);
            double low = 0.1 * FULL;
            assertThat(value(points, FigureName.RAIL_VOLTAGE, "plus"))
                    .isCloseTo(rail(NOMINAL, FULL, FULL), within(1e-6));
            assertThat(value(points, FigureName.RAIL_BALANCE, null)).isCloseTo(0.05, within(1e-6));
            assertThat(value(points, FigureName.LOAD_EFFECT, "plus"))
                    .isCloseTo((OHMS + PER_OTHER) * FULL, within(1e-6));
            assertThat(value(points, FigureName.OUTPUT_RESISTANCE, "plus")).isCloseTo(OHMS + PER_OTHER, within(1e-6));
            assertThat(value(points, FigureName.CROSS_EFFECT, "plus"))
                    .isCloseTo(-PER_OTHER * (FULL - low), within(1e-6));
            assertThat(value(points, FigureName.LINE_REGULATION, "plus"))
                    .isCloseTo(100 * SLOPE * 3.1 / rail(NOMINAL, FULL / 2, FULL / 2), within(1e-6));
        }
    }

    @Test
    void theLeadsStayInsideWhatIsAsWired() {
        List<OperatingPoint> points = session(0.02, true);
        double sag = 0.02 * 2 * FULL;
        assertThat(value(points, FigureName.RAIL_VOLTAGE_AS_WIRED, "plus"))
                .isCloseTo(rail(NOMINAL - sag, FULL, FULL), within(1e-6));
        assertThat(value(points, FigureName.CROSS_EFFECT_AS_WIRED, "plus"))
                .isCloseTo(-(PER_OTHER + 0.02 * SLOPE) * 0.9 * FULL, within(1e-6));
        assertThat(value(points, FigureName.RAIL_BALANCE_AS_WIRED, null)).isCloseTo(0.05, within(1e-6));
    }

    @Test
    void itIsSaidWhereItHoldsAndHowItCameThere() {
        assertThat(figure(session(0.02, true), FigureName.RAIL_VOLTAGE, Optional.of("plus"))
                        .orElseThrow()
                        .at())
                .contains(String.format(java.util.Locale.ROOT, "held at %.2f V", NOMINAL))
                .contains("moved by the step-up slope");
        assertThat(figure(session(0, true), FigureName.RAIL_VOLTAGE, Optional.of("plus"))
                        .orElseThrow()
                        .at())
                .contains("held at")
                .doesNotContain("moved");
    }

    /** Nothing says how the rail follows: one rail is moved in proportion, with that doubt; differences are not given. */
    @Test
    void withoutALineSweepTheDoubtIsInTheFigure() {
        List<OperatingPoint> points = session(0.02, false);
        Figure rail =
                figure(points, FigureName.RAIL_VOLTAGE, Optional.of("plus")).orElseThrow();
        double truth = rail(NOMINAL, FULL, FULL);
        assertThat(rail.at()).contains("in proportion");
        assertThat(Math.abs(rail.value().value() - truth))
                .isLessThan(2 * rail.value().u());
        assertThat(figure(points, FigureName.CROSS_EFFECT, Optional.of("plus"))).isEmpty();
        assertThat(figure(points, FigureName.CROSS_EFFECT_AS_WIRED, Optional.of("plus")))
                .isPresent();
    }

    /** Leads of the input meter reversed or off, and no line sweep: what is impossible is named elsewhere, and nothing breaks. */
    @Test
    void anInputReadBackwardsOrAsZeroBreaksNothing() {
        for (double sign : new double[] {-1, 0}) {
            List<OperatingPoint> wrong = Stream.of(
                            point("no-load", "0 %", 0, sign * NOMINAL, 0, 0),
                            point("load-sweep", "100 %", 10, sign * (NOMINAL - 0.4), FULL, FULL))
                    .toList();
            assertThat(Figures.of(wrong, Optional.of(DESIGN), RippleMeans.unknown()))
                    .as("%s", sign)
                    .isNotNull();
        }
    }
}
