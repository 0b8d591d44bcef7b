package railwitness.drivers.converter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Periods that are passed over change nothing but the time it takes to work them out. */
class HiccupsTest {
    private static final Feed WEAK = Feed.of(14.1, 2);

    /** @param atMost so short that no period has room, or long */
    private record Ran(LiveUnit unit, int steps) {
        static Ran of(double amps, double seconds, double atMost) {
            LiveUnit unit = new LiveUnit(SolverPaceTable.drawn(new Random(4)), 23);
            List<Draw> draws = unit.specimen().rails().stream()
                    .map(rail -> Draw.amps(amps))
                    .toList();
            unit.disturb();
            int steps = 0;
            for (double left = seconds; left > 1e-9; steps++) {
                left -= unit.step(WEAK, draws, true, Math.min(left, atMost));
            }
            return new Ran(unit, steps);
        }

        double rail() {
            return unit.balance().rails().get(0).volts();
        }
    }

    @Test
    void aCyclingUnitWarmsAsItDoesStepByStep() {
        Ran whole = Ran.of(3.5, 4, 0.004);
        Ran leaping = Ran.of(3.5, 4, 4);

        assertThat(leaping.steps()).isLessThan(whole.steps() / 4);
        double transformer = whole.unit().transformerDegC() - 23;
        double heatsink = whole.unit().heatsinkDegC() - 23;
        assertThat(heatsink).isGreaterThan(0.01);
        assertThat(leaping.unit().transformerDegC() - 23).isCloseTo(transformer, within(0.03 * transformer));
        assertThat(leaping.unit().heatsinkDegC() - 23).isCloseTo(heatsink, within(0.03 * heatsink));
    }

    /** Unloaded it pumps its rails up from hiccup to hiccup until it stays on: that must not be passed over. */
    @Test
    void aUnitThatGetsUpByHiccupsStillGetsUp() {
        double railAfter4 = Ran.of(0, 4, 4).rail();
        double railStepByStep = Ran.of(0, 4, 0.004).rail();
        Ran later = Ran.of(0, 10, 10);

        assertThat(railAfter4).isCloseTo(railStepByStep, within(0.1 * railStepByStep));
        assertThat(later.unit().balance().running()).isTrue();
        assertThat(later.rail()).isCloseTo(Ran.of(0, 10, 0.004).rail(), within(0.05));
    }
}
