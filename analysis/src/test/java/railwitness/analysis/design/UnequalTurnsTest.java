package railwitness.analysis.design;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import railwitness.analysis.reference.SimulatedSupply;

/**
 * Rails with turns of their own against a circuit simulation (ngspice 39): the demo's converter with a second pair of
 * secondary halves of 6 turns for the minus rail, coupled to all others by 0.9995, 2 A from each rail.
 */
class UnequalTurnsTest {
    private static final double INPUT_VOLTS = 13.661;
    private static final double INPUT_AMPERES = 9.298;
    private static final double PLUS_VOLTS = 39.206;
    private static final double MINUS_VOLTS = -19.038;

    private static Prediction predicted() {
        Design d = SimulatedSupply.design();
        Rail minus = new Rail(
                "minus",
                -18,
                OptionalDouble.of(4),
                OptionalInt.of(6),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        Design unequal = new Design(
                d.unit(),
                d.converter(),
                d.input(),
                d.transformer(),
                d.switches(),
                d.rectifier(),
                d.filter(),
                List.of(d.rails().get(0), minus),
                d.connected(),
                d.limits(),
                d.coldResistance(),
                d.decision(),
                d.requirements());
        return Prediction.of(unequal, INPUT_VOLTS, Map.of("plus", 2.0, "minus", 2.0))
                .orElseThrow();
    }

    @Test
    void eachRailSagsByItsOwnTurns() {
        assertThat(predicted().rail("plus").orElseThrow()).isCloseTo(PLUS_VOLTS, Percentage.withPercentage(1));
        assertThat(predicted().rail("minus").orElseThrow()).isCloseTo(MINUS_VOLTS, Percentage.withPercentage(1));
    }

    @Test
    void inputCurrentIsThatOfTheAmpereTurnsButForTheSnubbers() {
        assertThat(predicted().inputAmperes()).isCloseTo(INPUT_AMPERES, Percentage.withPercentage(2));
    }
}
