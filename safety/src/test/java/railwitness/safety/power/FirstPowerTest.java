package railwitness.safety.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railwitness.drivers.bench.Source;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.reading.Channel;
import railwitness.safety.interlock.Phase;

class FirstPowerTest {
    private static final Channel PLUS = Channel.of("plus.voltage");
    private static final Channel MINUS = Channel.of("minus.voltage");
    private static final List<RailTarget> PREDICTED =
            List.of(RailTarget.predicted(PLUS, 36.7, 0), RailTarget.predicted(MINUS, -36.7, 0));

    private final StandInBench bench = new StandInBench();
    private final List<Phase> phases = new ArrayList<>();
    private final List<String> asked = new ArrayList<>();
    private List<RailTarget> targets = PREDICTED;
    private Optional<Channel> inputVolts = Optional.empty();
    private boolean personSaysYes;

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
        bench.unit.shares.put("plus", 0.05);
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0)));
        assertThat(ended.stage()).isEqualTo("remote on");
        assertThat(ended.words()).contains("so the switches block", "shorted rectifier, turn or rail suspected");
        assertThat(phases).doesNotContain(Phase.UP);
        bench.pass(1);
        assertThat(bench.unit.output).isFalse();
    }

    @Test
    void railsThatDoNotComeUpEndIt() {
        targets = List.of(RailTarget.predicted(PLUS, 50, 0), RailTarget.predicted(MINUS, -50, 0));
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(6.0)));
        assertThat(ended.words())
                .contains(
                        "rails did not come up (plus 36.7 V of 50.0 V predicted, minus -36.7 V of -50.0 V predicted)");
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
        long begun = bench.scheduler.nowNanos();
        bench.scheduler.runUntil(() -> bench.unit.volts >= 9.5);
        assertThat((bench.scheduler.nowNanos() - begun) / 1e9).isLessThan(3);
    }

    @Test
    void inrushWindowFollowsFromEnergyAndLimit() {
        // two capacitors of 4700 uF at 42 V: 2 x 4700e-6 x 42^2 / 2 = 8.29 J; at 13.8 V and 2 A 0.30 s
        FirstPowerBounds bounds = new FirstPowerBounds(
                List.of(), 1, 0.1, true, 0, 13.8, 9.5, 2, 2 * 4700e-6 * 42 * 42 / 2, Duration.ZERO, 1, true);
        double seconds = bounds.inrushWindow().toNanos() / 1e9;
        assertThat((seconds - 0.1) / FirstPowerBounds.MARGIN).isCloseTo(0.30, within(0.005));
    }

    @Test
    void aRailBelowItsPredictionIsNotUp() {
        bench.unit.stepUp = 27 / 13.8;
        targets = List.of(RailTarget.predicted(PLUS, 40.7, 0), RailTarget.predicted(MINUS, -40.7, 0));
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0)));
        assertThat(ended.words()).contains("plus 27.0 V of 40.7 V predicted");
        assertThat(phases).doesNotContain(Phase.UP);
        bench.pass(1);
        assertThat(bench.unit.output).isFalse();
    }

    /** 27 V of 40.7 V, on for 0.4 s and off for 0.6 s: what a supply of 5 A and a hungry unit do to one another. */
    @Test
    void aUnitThatHiccupsIsNotUpWhateverItsMean() {
        for (double target : new double[] {36.7, 33, 27}) {
            FirstPowerTest fresh = new FirstPowerTest();
            fresh.bench.unit.hiccupSeconds = 0.4;
            fresh.targets = List.of(RailTarget.nominal(PLUS, target), RailTarget.nominal(MINUS, -target));
            fresh.personSaysYes = true;
            assertThat(fresh.run(bounds(List.of(3.0, 6.0)))).isInstanceOf(FirstPower.Outcome.Ended.class);
            assertThat(fresh.phases).doesNotContain(Phase.UP);
        }
    }

    @Test
    void aSupplyThatLimitsHoldsTheUnitBack() {
        bench.supply.conditions = Set.of(Condition.LIMITING);
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0)));
        assertThat(ended.words()).contains("the supply limits its current");
        assertThat(phases).doesNotContain(Phase.UP);
    }

    /** One that does not say so gives less than it was set to, at its limit. */
    @Test
    void limitingIsSeenInTheReadBackToo() {
        bench.unit.idleAmps = 4.9;
        bench.unit.sagVolts = 5;
        FirstPowerBounds wide =
                new FirstPowerBounds(List.of(3.0), 1, 0.1, true, 4700e-6, 13.8, 9.5, 5, 6, Duration.ZERO, 4.95, true);
        targets = List.of(RailTarget.nominal(PLUS, 23.4), RailTarget.nominal(MINUS, -23.4));
        bench.unit.startVolts = 6;
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(wide);
        assertThat(ended.words()).contains("the supply limits its current");
    }

    @Test
    void aNominalRailThatFitsNeedsNoQuestion() {
        targets = List.of(RailTarget.nominal(PLUS, 35), RailTarget.nominal(MINUS, -35));
        assertThat(run(bounds(List.of(3.0, 6.0)))).isInstanceOf(FirstPower.Outcome.Up.class);
        assertThat(asked).isEmpty();
    }

    @Test
    void railsThatStandElsewhereThanTheirNominalAreAskedAboutOnce() {
        targets = List.of(RailTarget.nominal(PLUS, 25), RailTarget.nominal(MINUS, -25));
        personSaysYes = true;
        assertThat(run(bounds(List.of(3.0, 6.0)))).isInstanceOf(FirstPower.Outcome.Up.class);
        assertThat(asked).hasSize(1).first().asString().contains("36.7 V", "25.0 V nominal");
    }

    @Test
    void withoutTheAnswerTheLimitStaysWhereItIs() {
        targets = List.of(RailTarget.nominal(PLUS, 25), RailTarget.nominal(MINUS, -25));
        FirstPower first = start(bounds(List.of(3.0, 6.0)));
        List<FirstPower.Outcome> outcomes = new ArrayList<>();
        first.begin(outcomes::add);
        bench.pass(60);
        assertThat(outcomes).isEmpty();
        assertThat(phases).doesNotContain(Phase.UP);
        bench.unit.idleAmps = 2;
        bench.pass(1);
        assertThat(outcomes).hasSize(1).first().isInstanceOf(FirstPower.Outcome.Ended.class);
    }

    /** A sound unit of which the sheet knows turns and rails only: 0.298 A is neither allowed nor forbidden. */
    @Test
    void anIdleCurrentThatNobodyKnowsIsAskedAboutOnce() {
        bench.unit.idleAmps = 0.298;
        personSaysYes = true;
        FirstPowerBounds unknown =
                new FirstPowerBounds(List.of(3.0), 1, 0.1, true, 4700e-6, 13.8, 9.5, 5, 6, Duration.ZERO, 4.5, false);
        assertThat(run(unknown)).isInstanceOf(FirstPower.Outcome.Up.class);
        assertThat(asked).hasSize(1).first().asString().contains("0.298 A", "does not say how much");
    }

    @Test
    void tooMuchCurrentWithRailsThatStandIsNoShortOfARail() {
        bench.unit.idleAmps = 2;
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0)));
        assertThat(ended.words())
                .contains("the rails read (plus 36.7 V, minus -36.7 V)", "not a short on a rail", "a turn, the core");
    }

    @Test
    void aReversedShuntEndsItInWords() {
        bench.unit.currentSign = -1;
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0)));
        assertThat(ended.words()).contains("input current reads -0.600 A", "the shunt's leads are reversed");
        bench.pass(1);
        assertThat(bench.unit.output).isFalse();
    }

    @Test
    void aReversedInputMeterEndsItAtTheFirstStep() {
        inputVolts = Optional.of(Channel.of("input.voltage"));
        bench.reversedInput = true;
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0, 9.0)));
        assertThat(ended.volts()).isEqualTo(3);
        assertThat(ended.words()).contains("input meter reads -3.00 V", "leads are reversed");
        assertThat(bench.supply.did).doesNotContain("remote true");
    }

    @Test
    void oneRailOfTheWrongSignIsItsMeter() {
        bench.unit.signs.put("plus", -1);
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0)));
        assertThat(ended.words())
                .contains("rail plus has the wrong sign (plus -36.7 V; the other rails are as they should be)")
                .doesNotContain("exchanged");
    }

    @Test
    void bothRailsOfTheWrongSignAreExchanged() {
        bench.unit.signs.put("plus", -1);
        bench.unit.signs.put("minus", 1);
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0)));
        assertThat(ended.words()).contains("rails plus and minus are exchanged");
        assertThat(phases).doesNotContain(Phase.UP);
        bench.pass(1);
        assertThat(bench.unit.output).isFalse();
    }

    @Test
    void railsOfOneSignThatFitOnlyWhenExchangedAreNamed() {
        bench.unit.signs.put("minus", 1);
        bench.unit.shares.put("minus", 0.33);
        targets = List.of(RailTarget.nominal(PLUS, 12), RailTarget.nominal(MINUS, 36));
        personSaysYes = true;
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0)));
        assertThat(ended.words()).contains("the rails plus and minus are exchanged");
        assertThat(asked).isEmpty();
    }

    @Test
    void aSupplyThatSaysItsOutputIsOffEndsIt() {
        bench.scheduler.after(Duration.ofSeconds(1), () -> bench.supply.conditions = Set.of(Condition.OUTPUT_OFF));
        FirstPower.Outcome.Ended ended = (FirstPower.Outcome.Ended) run(bounds(List.of(3.0, 6.0, 9.0)));
        assertThat(ended.words()).contains("its output is off, and nobody ordered that");
    }

    /** One that does not say so falls to zero volts and no current. */
    @Test
    void aSupplyThatResetsWithoutAWordEndsIt() {
        FirstPower first = start(bounds(List.of(3.0, 6.0, 9.0)));
        List<FirstPower.Outcome> outcomes = new ArrayList<>();
        first.begin(outcomes::add);
        bench.scheduler.after(Duration.ofSeconds(1), () -> {
            bench.unit.output(false);
            bench.unit.volts = 0;
        });
        bench.pass(10);
        assertThat(outcomes).hasSize(1);
        assertThat(((FirstPower.Outcome.Ended) outcomes.get(0)).words()).contains("reset itself");
    }

    private FirstPower.Outcome run(FirstPowerBounds bounds) {
        FirstPower first = start(bounds);
        FirstPower.Outcome[] outcome = new FirstPower.Outcome[1];
        first.begin(result -> outcome[0] = result);
        bench.scheduler.runUntil(() -> outcome[0] != null);
        return outcome[0];
    }

    private void ask(String sentence, Runnable yes) {
        asked.add(sentence);
        if (personSaysYes) {
            bench.scheduler.after(Duration.ofSeconds(2), yes);
        }
    }

    private FirstPower start(FirstPowerBounds bounds) {
        Settings settings = new Settings(Source.SUPPLY, 0, 14.4, 1, 16, 30, 0.01, 0.01, Optional.empty());
        bench.await(bench.power::arm, settings);
        FirstPower first = new FirstPower(
                bench.scheduler,
                bench.power,
                bounds,
                new FirstPowerReadings(
                        StandInSupply.AMPS,
                        "the shunt's leads",
                        0.05,
                        inputVolts,
                        StandInSupply.VOLTS,
                        StandInSupply.AMPS,
                        targets),
                then -> bench.power.remote(true, then),
                this::ask,
                phases::add);
        bench.also = first::heard;
        bench.alsoState = first::state;
        return first;
    }

    private static FirstPowerBounds bounds(List<Double> steps) {
        return new FirstPowerBounds(steps, 1, 0.1, true, 4700e-6, 13.8, 9.5, 5, 6, Duration.ofMillis(200), 1, true);
    }
}
