package railwitness.safety.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railwitness.drivers.reading.Channel;
import railwitness.safety.caution.Source;
import railwitness.safety.interlock.Phase;

class FirstPowerTest {
    private static final List<Channel> RAILS = List.of(Channel.of("plus.voltage"), Channel.of("minus.voltage"));

    private final StandInBench bench = new StandInBench();
    private final List<Phase> phases = new ArrayList<>();

    @Test
    void aHealthyUnitComesUpThroughAllPhases() {
        assertThat(run(bounds(List.of(3.0, 6.0, 9.0)))).isInstanceOf(FirstPower.Outcome.Up.class);
        assertThat(phases).containsExactly(Phase.FIRST_POWER, Phase.INRUSH, Phase.WORKING, Phase.UP);
        assertThat(bench.unit.output && bench.unit.remote).isTrue();
    }

    @Test
    void aShortedSwitchEndsItAtTheFirstStepWithTheRemoteOff() {
        bench.unit.standbyAmps = 0.9;
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0, 9.0)));
        assertThat(ended.stage()).isEqualTo("remote off");
        assertThat(ended.volts()).isEqualTo(3);
        assertThat(ended.amps()).hasValue(0.9);
        assertThat(ended.words()).contains("draws 0.900 A at 3.00 V", "shorted switch suspected");
        bench.pass(1);
        assertThat(bench.unit.output).isFalse();
        assertThat(bench.supply.did).doesNotContain("remote true");
    }

    @Test
    void aShortOnTheSecondaryEndsItAfterTheInrushWindow() {
        bench.unit.idleAmps = 2;
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0)));
        assertThat(ended.stage()).isEqualTo("remote on");
        assertThat(ended.words()).contains("so the switches block", "shorted rectifier, turn or rail suspected");
        assertThat(phases).doesNotContain(Phase.UP);
        bench.pass(1);
        assertThat(bench.unit.output).isFalse();
    }

    @Test
    void railsThatDoNotComeUpEndIt() {
        FirstPowerBounds high = bounds(List.of(6.0), 40);
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(high);
        assertThat(ended.words()).contains("rails did not come up (plus 36.7 V, minus -36.7 V)");
    }

    @Test
    void aUnitWithoutRemoteIsPoweredAtItsWorkingVoltage() {
        bench.unit.remote = true;
        assertThat(run(bounds(List.of()))).isInstanceOf(FirstPower.Outcome.Up.class);
    }

    @Test
    void someoneElsesOffStopsIt() {
        List<FirstPower.Outcome> outcomes = new ArrayList<>();
        FirstPower first = start(bounds(List.of(3.0, 6.0, 9.0)));
        first.begin(outcomes::add);
        bench.pass(0.3);
        bench.power.off("stop", ended -> {});
        bench.pass(3);
        assertThat(outcomes).hasSize(1).first().isInstanceOf(FirstPower.Outcome.Stopped.class);
    }

    @Test
    void itDoesNotDwellBelowTheStartVoltage() {
        FirstPower first = start(bounds(List.of(3.0, 6.0, 9.0)));
        FirstPower.Outcome[] outcome = new FirstPower.Outcome[1];
        first.begin(result -> outcome[0] = result);
        long begun = bench.agenda.nowNanos();
        bench.agenda.runUntil(() -> bench.unit.volts >= 9.5);
        assertThat((bench.agenda.nowNanos() - begun) / 1e9).isLessThan(3);
    }

    @Test
    void inrushWindowFollowsFromEnergyAndLimit() {
        // two capacitors of 4700 uF at 42 V: 2 x 4700e-6 x 42^2 / 2 = 8.29 J; at 13.8 V and 2 A 0.30 s
        FirstPowerBounds bounds = new FirstPowerBounds(
                List.of(), 1, 0.1, 0, 13.8, 9.5, 2, 2 * 4700e-6 * 42 * 42 / 2, Duration.ZERO, 1, 20);
        double seconds = bounds.inrushWindow().toNanos() / 1e9;
        assertThat((seconds - 0.1) / FirstPowerBounds.MARGIN).isCloseTo(0.30, within(0.005));
    }

    private FirstPower.Outcome run(FirstPowerBounds bounds) {
        FirstPower first = start(bounds);
        FirstPower.Outcome[] outcome = new FirstPower.Outcome[1];
        first.begin(result -> outcome[0] = result);
        bench.agenda.runUntil(() -> outcome[0] != null);
        return outcome[0];
    }

    private FirstPower start(FirstPowerBounds bounds) {
        Settings settings = new Settings(Source.SUPPLY, 0, 14.4, 1, 16, 30, 0.01, 0.01, Optional.empty());
        bench.await(bench.power::arm, settings);
        FirstPower first = new FirstPower(
                bench.agenda,
                bench.power,
                bounds,
                StandInSupply.AMPS,
                RAILS,
                then -> bench.power.remote(true, then),
                phases::add);
        bench.also = first::heard;
        return first;
    }

    private static FirstPowerBounds bounds(List<Double> steps) {
        return bounds(steps, 20);
    }

    private static FirstPowerBounds bounds(List<Double> steps, double railLow) {
        return new FirstPowerBounds(steps, 1, 0.1, 4700e-6, 13.8, 9.5, 5, 6, Duration.ofMillis(200), 1, railLow);
    }
}
