package railwitness.analysis.contradiction;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railwitness.analysis.reference.SimulatedSupply;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.uncertainty.Estimate;

/** Loads of resistors without a meter on the plus rail of the simulated supply, one of which was typed wrongly. */
class OddResistorTest {
    private static final double RELATIVE_U = 1e-3;

    /** The point as it is worked out when the resistor that was typed is so many times the one switched in. */
    private static Testimony bank(OperatingPoint point, double ohmsBy) {
        Map<String, RailPoint> rails = new LinkedHashMap<>(point.rails());
        RailPoint plus = rails.get("plus");
        Estimate amps = plus.current().over(Estimate.exact(ohmsBy));
        rails.put(
                "plus", new RailPoint(plus.voltage(), amps, plus.voltage().abs().times(amps), plus.rippleRms()));
        OperatingPoint typed = new OperatingPoint(
                point.stage(),
                point.step(),
                point.count(),
                point.fromSeconds(),
                point.toSeconds(),
                true,
                point.input(),
                point.inputSource(),
                point.setVolts(),
                rails,
                point.temperatures());
        Map<String, Mean> means = new LinkedHashMap<>();
        means.put("input.voltage", new Mean(point.input().voltage(), false));
        means.put("input.current", new Mean(point.input().current(), false));
        point.rails().forEach((rail, at) -> means.put(rail + ".voltage", new Mean(at.voltage(), false)));
        means.put("minus.current", new Mean(point.rails().get("minus").current(), false));
        return new Testimony(typed, means, Map.of(), amps.value() > 0 ? Map.of("plus", amps) : Map.of());
    }

    private static List<Contradiction> found(List<OperatingPoint> points, String step, double ohmsBy) {
        List<Testimony> all = new ArrayList<>();
        points.forEach(point -> all.add(
                bank(point, point.stage().equals("load-sweep") && point.step().equals(step) ? ohmsBy : 1)));
        return Contradictions.of(
                Optional.of(SimulatedSupply.design()), new Witnesses(all, true, OptionalDouble.empty()));
    }

    @Test
    void resistorsThatAreWhatWasTypedAccuseNobody() {
        assertThat(found(SimulatedSupply.healthy(RELATIVE_U), "", 1)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"fault_a", "fault_b", "fault_c", "fault_d"})
    void neitherDoesAUnitWithAFault(String fault) {
        List<OperatingPoint> points = SimulatedSupply.faulty(fault, RELATIVE_U);
        assertThat(points).isNotEmpty();
        assertThat(found(points, "", 1)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"load_025", "load_050", "load_075", "load_100"})
    void oneOfTwiceTheValueIsNamedAtItsStep(String step) {
        assertThat(found(SimulatedSupply.healthy(RELATIVE_U), step, 2))
                .anySatisfy(one -> assertThat(one.text()).contains("resistor that was typed", step));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.67, 1.5, 3})
    void soAreOthersThatAreFarOff(double ohmsBy) {
        assertThat(found(SimulatedSupply.healthy(RELATIVE_U), "load_075", ohmsBy))
                .isNotEmpty();
    }
}
