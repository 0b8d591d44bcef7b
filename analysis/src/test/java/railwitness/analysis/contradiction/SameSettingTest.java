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
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/** A line sweep: the loads stay as they are set, the input goes from 11 V to 15 V. */
class SameSettingTest {
    private static final double SET = 2;

    /** @param gain what the plus meter and its load are off by together, unknown but the same at each step */
    private static List<Contradiction> found(double gain, double oddBy) {
        Influence shared = Influence.normal("plus load, gain", 0.005, "1");
        List<Testimony> all = new ArrayList<>();
        for (int step = 0; step < 5; step++) {
            double volts = 11 + step;
            double rail = 2.9 * volts - 1.4;
            double amps = SET * (1 + gain) * (step == 3 ? oddBy : 1);
            Estimate plus = Estimate.of(amps, shared.times(amps));
            Estimate in = Estimate.exact(2 * rail * SET / 0.88 / volts);
            OperatingPoint point = OperatingPoint.of("line-sweep", (int) volts + " V")
                    .during(10 * step, 10 * step + 5)
                    .setVolts(volts)
                    .inputVoltage(Estimate.exact(volts))
                    .inputCurrent(in)
                    .railVoltage("plus", Estimate.exact(rail))
                    .railVoltage("minus", Estimate.exact(-rail))
                    .railCurrent("plus", plus)
                    .railCurrent("minus", Estimate.exact(SET))
                    .build();
            Testimony plain = Testimony.of(point);
            all.add(new Testimony(
                    point, new LinkedHashMap<>(plain.means()), Map.of("plus", SET, "minus", SET), Map.of()));
        }
        return Contradictions.of(Optional.empty(), new Witnesses(all, true, OptionalDouble.of(40)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.008, -0.008})
    void whatIsOffTheSameAtEveryStepIsBelieved(double gain) {
        assertThat(found(gain, 1)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.99, 1.01, 1.02})
    void onePerCentAtOneStepIsNamed(double oddBy) {
        assertThat(found(0.004, oddBy)).singleElement().satisfies(one -> assertThat(one.text())
                .contains("the plus load is set to 2.000 A at 5 steps", "line-sweep 14 V"));
    }

    @Test
    void whatALoadMayComeBackToIsBelieved() {
        assertThat(found(0, 1.003)).isEmpty();
    }
}
