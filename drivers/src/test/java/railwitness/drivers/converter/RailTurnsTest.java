package railwitness.drivers.converter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Rails on a part of the secondary's turns, and rails that a series regulator holds. */
class RailTurnsTest {
    private static final double DEG_C = 25;

    private static Specimen unit(double share, OptionalDouble held) {
        Specimen usual = Specimen.usual();
        return usual.withRail("minus", rail -> rail.withOutput(share, held));
    }

    private static Balance settled(Specimen unit, double plus, double minus) {
        return new ConverterModel(unit)
                .settled(Feed.of(13.8, 60), List.of(Draw.amps(plus), Draw.amps(minus)), DEG_C, DEG_C);
    }

    private static double outWatts(Balance balance) {
        return balance.rails().stream()
                .mapToDouble(rail -> Math.abs(rail.volts()) * rail.amps())
                .sum();
    }

    @Test
    void halfTheTurnsGiveHalfTheRail() {
        Balance idle = settled(unit(0.5, OptionalDouble.empty()), 0, 0);
        double drop = 0.6; // of a diode that hardly conducts
        double plus = idle.rails().get(0).volts();
        double minus = -idle.rails().get(1).volts();
        assertThat(minus + drop).isCloseTo((plus + drop) / 2, Percentage.withPercentage(2));
    }

    @Test
    void halfTheTurnsAskForHalfTheInputCurrent() {
        Specimen half = unit(0.5, OptionalDouble.empty());
        double idle = settled(half, 0, 0).inputAmps();
        double whole = settled(half, 2, 0).inputAmps() - idle;
        double part = settled(half, 0, 2).inputAmps() - idle;
        assertThat(part).isCloseTo(whole / 2, Percentage.withPercentage(4));
    }

    @Test
    void aHeldRailStandsStillAndBurnsTheRest() {
        Balance held = settled(unit(0.5, OptionalDouble.of(12)), 1, 1);
        assertThat(held.rails().get(1).volts()).isCloseTo(-12, within(1e-9));
        Balance free = settled(unit(0.5, OptionalDouble.empty()), 1, 1);
        double burnt = -free.rails().get(1).volts() - 12;
        assertThat(held.losses().rectifiers() - free.losses().rectifiers()).isCloseTo(burnt, within(0.02));
        assertThat(held.inputAmps()).isCloseTo(free.inputAmps(), within(1e-3));
    }

    @Test
    void powersBalanceWithUnequalTurnsAndAHeldRail() {
        for (Specimen unit : List.of(
                unit(0.4, OptionalDouble.empty()),
                unit(0.5, OptionalDouble.of(12)),
                unit(1.3, OptionalDouble.empty()))) {
            Balance balance = settled(unit, 3, 2);
            double in = balance.terminalVolts() * balance.inputAmps();
            assertThat(in).isCloseTo(outWatts(balance) + balance.losses().total(), Percentage.withPercentage(0.5));
        }
    }
}
