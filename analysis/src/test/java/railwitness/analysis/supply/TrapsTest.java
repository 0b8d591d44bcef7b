package railwitness.analysis.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Converter;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Input;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.design.Unit;
import railwitness.analysis.uncertainty.Estimate;

/** Places where a plain calculation goes wrong. Made-up supplies whose true figures are known. */
class TrapsTest {
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();
    private static final double OHMS = 0.5;

    @Test
    void emptyChokeAtLightLoadIsLeftOutOfTheLine() {
        List<OperatingPoint> points = new ArrayList<>();
        points.add(point("no-load", 0, 12, 35, 0));
        points.add(point("load-sweep", 1, 12, 26, 0.2)); // the choke still runs empty: 26 V instead of 21.5 V
        for (double amperes : new double[] {1, 2, 3, 4}) {
            points.add(point("load-sweep", 2 + amperes, 12, 21.6 - OHMS * amperes, amperes));
        }
        Figures figures = figures(points, choke());
        Figure resistance =
                figures.find(FigureName.OUTPUT_RESISTANCE, Optional.of("plus")).orElseThrow();
        assertThat(resistance.value().value()).isCloseTo(OHMS, within(1e-6));
        assertThat(resistance.at()).startsWith("25 to 100 % of full load");
    }

    @Test
    void slopeOfAChokeInputIsRatioTimesDuty() {
        List<OperatingPoint> points = new ArrayList<>();
        for (double volts : new double[] {11, 12, 14}) {
            points.add(point("line-sweep", volts, volts, 1.8 * volts - 1, 2));
        }
        Figures figures = figures(points, choke());
        assertThat(figures.value(FigureName.STEP_UP_SLOPE, "plus").orElseThrow().value())
                .isCloseTo(1.8, within(1e-9));
        assertThat(figures.value(FigureName.EFFECTIVE_TURNS_RATIO, "plus")
                        .orElseThrow()
                        .value())
                .isCloseTo(3.0, within(1e-9));
    }

    @Test
    void regulatedUnitHasNoRatioUnlessItFallsOutOfRegulation() {
        Design regulated = sheet(new Converter(
                FilterInput.CAPACITOR, true, OptionalDouble.of(25_000), OptionalDouble.of(0.45), UNKNOWN, UNKNOWN));
        List<OperatingPoint> points = new ArrayList<>();
        for (double volts : new double[] {12, 13, 14}) {
            points.add(point("line-sweep", volts, volts, 30, 2));
        }
        assertThat(figures(points, regulated).notFound())
                .contains(new NotFound(FigureName.EFFECTIVE_TURNS_RATIO, Optional.of("plus"), "the unit regulates"));
        points.add(point("line-sweep", 9, 9, 26, 2));
        points.add(point("line-sweep", 8, 8, 23, 2));
        assertThat(figures(points, regulated)
                        .value(FigureName.EFFECTIVE_TURNS_RATIO, "plus")
                        .orElseThrow()
                        .value())
                .isCloseTo(3.0, within(1e-9));
    }

    @Test
    void heatingIsNotTakenForLoad() {
        // the rail falls by heating alone as time goes on; the repeated 25 % step shows it
        List<OperatingPoint> points = new ArrayList<>();
        double[] loads = {1, 2, 3, 4, 1};
        for (int step = 0; step < loads.length; step++) {
            double volts = 36 - OHMS * loads[step] - 0.1 * step;
            points.add(point("load-sweep", 10.0 * step, 12, volts, loads[step]));
        }
        Figures figures = figures(points, capacitor());
        assertThat(figures.value(FigureName.OUTPUT_RESISTANCE_AS_WIRED, "plus")
                        .orElseThrow()
                        .value())
                .isCloseTo(OHMS, within(1e-6));
    }

    @Test
    void resistorsThatDrawLessAtLowInputDoNotBendTheSlope() {
        List<OperatingPoint> points = new ArrayList<>();
        for (double amperes : new double[] {1, 2, 3, 4}) {
            points.add(point("load-sweep", amperes, 12, 3 * 12 - 1 - OHMS * amperes, amperes));
        }
        for (double volts : new double[] {10, 11, 14}) {
            double amperes = (3 * volts - 1) / (17.5 + OHMS); // a 17.5 ohm resistor
            points.add(point("line-sweep", 10 + volts, volts, 17.5 * amperes, amperes));
        }
        Figure slope = figures(points, capacitor())
                .find(FigureName.STEP_UP_SLOPE, Optional.of("plus"))
                .orElseThrow();
        assertThat(slope.value().value()).isCloseTo(3.0, within(1e-6));
        assertThat(slope.at()).contains("the load changed with the rail");
    }

    @Test
    void dropOutLiesBetweenTheLastInputThatHeldAndTheFirstThatDidNot() {
        List<OperatingPoint> points = new ArrayList<>();
        for (double volts : new double[] {12, 10, 9}) {
            points.add(point("line-sweep", 20 - volts, volts, 3 * volts, 2));
        }
        points.add(point("line-sweep", 20, 8.6, 0.2, 2));
        Figures figures = figures(points, capacitor());
        Estimate dropOut = figures.value(FigureName.DROP_OUT_VOLTAGE).orElseThrow();
        assertThat(dropOut.value()).isCloseTo(8.8, within(1e-9));
        assertThat(dropOut.u()).isCloseTo(0.2 / Math.sqrt(3), within(1e-9));
        assertThat(figures.value(FigureName.STEP_UP_SLOPE, "plus").orElseThrow().value())
                .isCloseTo(3.0, within(1e-9));
    }

    @Test
    void sagWithoutALineSweepIsNotHeld() {
        List<OperatingPoint> points = List.of(point("no-load", 0, 13.8, 41, 0), point("load-sweep", 1, 13.3, 37, 4));
        assertThat(figures(points, capacitor()).notFound())
                .extracting(missing -> missing.name().word() + ": " + missing.reason())
                .contains("load effect: the input sagged and no line sweep says how the rail follows it");
    }

    private static Figures figures(List<OperatingPoint> points, Design design) {
        return Figures.of(points, Optional.of(design), RippleMeans.unknown());
    }

    private static OperatingPoint point(String stage, double seconds, double inputVolts, double volts, double amperes) {
        return OperatingPoint.of(stage, stage)
                .during(seconds, seconds)
                .inputVoltage(Estimate.exact(inputVolts))
                .inputCurrent(Estimate.exact(0.1 + 3 * amperes))
                .railVoltage("plus", Estimate.exact(volts))
                .railCurrent("plus", Estimate.exact(amperes))
                .build();
    }

    private static Design choke() {
        return sheet(new Converter(
                FilterInput.CHOKE, false, OptionalDouble.of(25_000), OptionalDouble.of(0.3), UNKNOWN, UNKNOWN));
    }

    private static Design capacitor() {
        return sheet(Converter.unregulated(FilterInput.CAPACITOR));
    }

    private static Design sheet(Converter converter) {
        return Design.of(
                new Unit("made up", Optional.empty(), Optional.empty(), Optional.empty()),
                converter,
                Input.of(12),
                Transformer.of(4, 12),
                List.of(new Rail("plus", 30, OptionalDouble.of(4))));
    }
}
