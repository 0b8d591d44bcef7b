package railwitness.analysis.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railwitness.analysis.design.Converter;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Input;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.design.Unit;
import railwitness.analysis.uncertainty.Estimate;

/** Regulation and efficiency against worked textbook cases. */
class TextbookFiguresTest {

    @Test
    void regulationOfNominalIsBellsAndOfFullLoadFloyds() {
        // 12.0 V without load, 11.9 V at full load. Bell, Electronic Instrumentation, 16-1: 0.83 %, over the no-load
        // and
        // nominal 12 V; Floyd, Electronic Devices, 17-2: 0.84 %, over the full-load voltage. As printed in public
        // copies.
        Figures figures = Figures.of(
                List.of(point("no-load", 15, 0.1, 12.0, 0), point("load-sweep", 15, 0.2, 11.9, 0.01)),
                Optional.of(twelveVolts()),
                RippleMeans.unknown());
        assertThat(figures.value(FigureName.LOAD_EFFECT, "plus").orElseThrow().value())
                .isCloseTo(0.1, within(1e-9));
        assertThat(figures.value(FigureName.LOAD_REGULATION_OF_NOMINAL, "plus")
                        .orElseThrow()
                        .value())
                .isCloseTo(0.83, within(0.005));
        assertThat(figures.value(FigureName.LOAD_REGULATION_OF_FULL_LOAD, "plus")
                        .orElseThrow()
                        .value())
                .isCloseTo(0.84, within(0.005));
    }

    @ParameterizedTest
    @CsvSource({
        "60, 56, 7.1", // Boylestad and Nashelsky, Electronic Devices and Circuit Theory, ch. 15, regulation: 7.1 %
        "24.5, 24, 2.08" // Gupta and Singhal, Power Electronics, 10.1: 2.08 %
    })
    void regulationOverFullLoad(double noLoadVolts, double fullLoadVolts, double percent) {
        Figures figures = Figures.of(
                List.of(point("no-load", 15, 0.1, noLoadVolts, 0), point("load-sweep", 15, 0.2, fullLoadVolts, 0.01)),
                Optional.of(twelveVolts()),
                RippleMeans.unknown());
        assertThat(figures.value(FigureName.LOAD_REGULATION_OF_FULL_LOAD, "plus")
                        .orElseThrow()
                        .value())
                .isCloseTo(percent, within(0.05));
    }

    @Test
    void lineRegulationIsBells() {
        // Bell, Electronic Instrumentation, 16-1: 12 V falls to 11.95 V when the supply falls by 10 %: 50 mV, 0.42 %
        Figures figures = Figures.of(
                List.of(point("line-sweep", 15, 0.2, 12, 0.01), point("line-sweep", 13.5, 0.2, 11.95, 0.01)),
                Optional.of(twelveVolts()),
                RippleMeans.unknown());
        assertThat(figures.value(FigureName.LINE_REGULATION, "plus")
                        .orElseThrow()
                        .value())
                .isCloseTo(0.42, within(0.005));
    }

    @ParameterizedTest
    @CsvSource({
        "15, 0.565, 9.35, 0.234, 0.258", // Malvino and Bates, Electronic Principles, 24-3: 25.8 %
        "15, 0.230, 9.2, 0.230, 0.613", // Malvino and Bates, 24-8: 61.3 %
        "100, 7.5, 24, 30, 0.960" // Rashid, Power Electronics, 13.1: 720 W of 750 W, 96.0 %
    })
    void efficiencyIsOutputOverInput(
            double inputVolts, double inputAmperes, double volts, double amperes, double expected) {
        OperatingPoint point = point("load-sweep", inputVolts, inputAmperes, volts, amperes);
        assertThat(point.efficiency().orElseThrow().value()).isCloseTo(expected, within(0.0005));
    }

    @Test
    void lossIsWhatMalvinoPrints() {
        // Malvino and Bates, 24-3: 8.475 W in, 2.19 W out, 6.29 W lost
        OperatingPoint point = point("load-sweep", 15, 0.565, 9.35, 0.234);
        assertThat(point.input().power().value()).isCloseTo(8.475, within(1e-9));
        assertThat(point.loss().value()).isCloseTo(6.29, within(0.005));
    }

    @Test
    void nothingDrawnHasNoEfficiency() {
        assertThat(point("standby", 12, 0, 0, 0).efficiency()).isEmpty();
    }

    @Test
    void negativeRailsPowerIsPositive() {
        OperatingPoint point = point("load-sweep", 12, 8, -36, 2);
        assertThat(point.outputPower().value()).isEqualTo(72);
        assertThat(point.rails().get("plus").voltage().value()).isEqualTo(-36);
    }

    static OperatingPoint point(String stage, double inputVolts, double inputAmperes, double volts, double amperes) {
        return OperatingPoint.of(stage, stage)
                .inputVoltage(Estimate.exact(inputVolts))
                .inputCurrent(Estimate.exact(inputAmperes))
                .railVoltage("plus", Estimate.exact(volts))
                .railCurrent("plus", Estimate.exact(amperes))
                .build();
    }

    private static Design twelveVolts() {
        return Design.of(
                new Unit("supply", Optional.empty(), Optional.empty(), Optional.empty()),
                Converter.unregulated(FilterInput.CAPACITOR),
                Input.of(15),
                Transformer.of(1, 1),
                List.of(new Rail("plus", 12, OptionalDouble.of(0.01))));
    }
}
