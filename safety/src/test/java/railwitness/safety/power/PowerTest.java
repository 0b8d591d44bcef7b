package railwitness.safety.power;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railwitness.drivers.bench.Source;

class PowerTest {
    private final StandInBench bench = new StandInBench();
    private final Power power = bench.power;

    @Test
    void armingSetsAndReadsBackEverythingBeforePower() {
        assertThat(bench.arm().isDone()).isTrue();
        assertThat(power.state()).isEqualTo(PowerState.ARMED);
        assertThat(bench.supply.did.stream().filter(what -> !what.equals("poll")))
                .containsExactly(
                        "off",
                        "on?",
                        "remote false",
                        "volts",
                        "volts?",
                        "limit",
                        "limit?",
                        "ovp",
                        "ovp?",
                        "ocp",
                        "ocp?");
        assertThat(bench.unit.output).isFalse();
        assertThat(bench.plus.did).startsWith("off", "on?");
    }

    @Test
    void outputComesOnOnlyAfterArming() {
        assertThat(bench.on()).isInstanceOf(Result.Refused.class);
        assertThat(bench.supply.did).doesNotContain("on");
    }

    @Test
    void aWrongReadBackIsRefusedAndSwitchedOff() {
        bench.supply.readsBackWrong = true;
        Result result = bench.arm();
        assertThat(result).isInstanceOf(Result.Refused.class);
        assertThat(result.words())
                .isEqualTo("voltage set to 13.800 V, reads back 14.800 V: where it can only be set in such steps,"
                        + " resolution_V of this instrument on the bench sheet states them");
        assertThat(power.state()).isEqualTo(PowerState.SWITCHING_OFF);
        assertThat(bench.on()).isInstanceOf(Result.Refused.class);
    }

    @Test
    void aSupplyWithoutProtectionNeedsWordsOfAcceptance() {
        bench.supply.hasProtection = false;
        assertThat(bench.arm().words()).contains("does not accept that in words");
        Settings accepted = new Settings(
                Source.SUPPLY, 13.8, 14.4, 5, 16, 30, 0.01, 0.01, Optional.of("a 10 A fuse stands in the lead"));
        assertThat(bench.await(power::arm, accepted).isDone()).isTrue();
        assertThat(bench.steps).anyMatch(step -> step.contains("a 10 A fuse stands in the lead"));
    }

    @Test
    void aBatteryAcrossTheSupplyIsRefused() {
        Settings battery =
                new Settings(Source.SUPPLY_WITH_BATTERY, 13.8, 14.4, 5, 16, 30, 0.01, 0.01, Optional.empty());
        assertThat(bench.await(power::arm, battery).words()).contains("does not end the power");
    }

    @Test
    void nothingRisesWithoutTheInterlocksPermission() {
        bench.arm();
        bench.permitted = false;
        assertThat(bench.on().words()).contains("interlock does not permit");
        assertThat(bench.supply.did).doesNotContain("on");
    }

    @Test
    void voltageAboveWhatWasArmedIsRefused() {
        bench.running();
        assertThat(bench.await(power::setVolts, 14.5).words()).contains("outside what was armed");
        assertThat(bench.await(power::setVolts, 14.4).isDone()).isTrue();
    }

    @Test
    void aSupplyThatDoesNotComeOnIsSwitchedOff() {
        bench.supply.refusesOn = true;
        bench.arm();
        assertThat(bench.on()).isInstanceOf(Result.Refused.class);
        assertThat(power.state()).isEqualTo(PowerState.SWITCHING_OFF);
    }

    @Test
    void loadsStayOnUntilTheRailsAreSafeThenGoOff() {
        bench.running();
        boolean[] early = {false};
        bench.also = reading -> early[0] |= !bench.plus.on && Math.abs(bench.unit.rail("plus")) > 5;
        Ended ended = bench.off();
        assertThat(ended.confirmed()).isTrue();
        assertThat(ended.railsSafe()).isTrue();
        assertThat(early[0]).isFalse();
        assertThat(bench.plus.on || bench.minus.on).isFalse();
        assertThat(power.state()).isEqualTo(PowerState.OFF);
        assertThat(bench.unit.remote).isFalse();
    }

    @Test
    void aLogThatThrowsAtAnyStepIsHeardOfAndOffGoesOn() {
        for (int ahead = 1; ahead <= 7; ahead++) {
            StandInBench failing = new StandInBench().running();
            failing.throwsAtStep = failing.steps.size() + ahead;
            Ended[] ended = new Ended[1];
            int heard = 0;
            failing.power.off("stop", words -> ended[0] = words);
            for (int second = 0; second < 30; second++) {
                try {
                    failing.pass(1);
                } catch (IllegalStateException e) {
                    heard++;
                }
            }
            assertThat(ended[0])
                    .as("off, when step %d from there throws", ahead)
                    .isNotNull();
            assertThat(ended[0].confirmed()).isTrue();
            assertThat(heard)
                    .as("told of step %d", ahead)
                    .isEqualTo(failing.steps.size() >= failing.throwsAtStep ? 1 : 0);
        }
    }

    @Test
    void offOvertakesWhatIsInFlight() {
        bench.running();
        Result[] stopped = new Result[1];
        power.setVolts(12, result -> stopped[0] = result);
        power.off("stop", ended -> {});
        assertThat(bench.supply.did).last().isEqualTo("off bytes");
        bench.pass(1);
        assertThat(stopped[0]).isInstanceOf(Result.Stopped.class);
    }

    @Test
    void switchingOnNeverFollowsAnOff() {
        bench.arm();
        power.on(result -> {});
        power.off("stop", ended -> {});
        bench.pass(2);
        assertThat(bench.unit.output).isFalse();
        assertThat(bench.supply.did.lastIndexOf("on")).isLessThan(bench.supply.did.lastIndexOf("off bytes"));
    }

    @Test
    void anOffIgnoredOnceIsRepeated() {
        bench.running().supply.ignoresOff = 1;
        assertThat(bench.off().confirmed()).isTrue();
        assertThat(bench.unit.output).isFalse();
        assertThat(bench.alarms).isEmpty();
    }

    @Test
    void anOffIgnoredForEverIsToldLoudly() {
        bench.running().supply.ignoresOff = Integer.MAX_VALUE;
        AtomicReference<Ended> ended = new AtomicReference<>();
        power.off("end of the run", ended::set);
        bench.pass(10);
        assertThat(bench.alarms).containsExactly("the supply could not be switched off: open the disconnect");
        assertThat(power.state()).isEqualTo(PowerState.NOT_CONFIRMED);
        int before = offBytes();
        bench.pass(600);
        assertThat(offBytes() - before).isGreaterThanOrEqualTo(550);
        assertThat(ended.get()).isNull();
    }

    @Test
    void onlyThePersonsWordEndsAnOffThatIsNotConfirmed() {
        bench.running().supply.ignoresOff = Integer.MAX_VALUE;
        AtomicReference<Ended> ended = new AtomicReference<>();
        power.off("end of the run", ended::set);
        bench.pass(20);
        power.disconnectOpen();
        bench.pass(20);
        assertThat(ended.get().confirmed()).isFalse();
        assertThat(ended.get().words())
                .contains("could not be switched off: open the disconnect; a person says that it is open");
        assertThat(bench.plus.on || bench.minus.on).isFalse();
    }

    @Test
    void everyFurtherCallForOffSendsTheBytesAtOnce() {
        bench.running().supply.dead = true;
        power.off("end of the run", ended -> {});
        bench.pass(30);
        for (int press = 0; press < 20; press++) {
            int before = offBytes();
            power.off("Escape", ended -> {});
            assertThat(offBytes()).isEqualTo(before + 1);
            bench.pass(0.37);
        }
    }

    /** Silent for longer than all patience, then there again: off, rails and loads judged anew, remote turn-on off. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 3, 7, 11, 60, 900})
    void aSupplyThatIsSilentForAWhileEndsOffWhenItAnswersAgain(double seconds) {
        bench.running().supply.dead = true;
        bench.plus.dead = true;
        AtomicReference<Ended> ended = new AtomicReference<>();
        power.off("end of the run", ended::set);
        bench.pass(seconds);
        assertThat(ended.get()).isNull();
        bench.supply.dead = false;
        bench.plus.dead = false;
        bench.scheduler.runUntil(() -> ended.get() != null);
        assertThat(bench.unit.output).isFalse();
        assertThat(ended.get().confirmed()).isTrue();
        assertThat(bench.unit.remote).isFalse();
        assertThat(bench.plus.on || bench.minus.on).isFalse();
        assertThat(ended.get().words()).doesNotContain("could not be confirmed");
        assertThat(bench.over).hasSize(bench.alarms.size());
        assertThat(power.state()).isEqualTo(PowerState.OFF);
    }

    /** The port goes, with the cable or its converter, and comes back: the line is opened again. */
    @Test
    void aLostLineIsOpenedAgain() {
        bench.running().supply.lost = true;
        AtomicReference<Ended> ended = new AtomicReference<>();
        power.off("end of the run", ended::set);
        bench.pass(30);
        assertThat(bench.unit.output).isTrue();
        assertThat(power.state()).isEqualTo(PowerState.NOT_CONFIRMED);
        bench.supply.portBack = true;
        bench.scheduler.runUntil(() -> ended.get() != null);
        assertThat(bench.unit.output).isFalse();
        assertThat(ended.get().confirmed()).isTrue();
        assertThat(bench.supply.did).contains("reconnect");
    }

    @Test
    void nothingIsKnownOfAnOutputBeforeItWasAsked() {
        assertThat(power.state()).isEqualTo(PowerState.NOT_KNOWN);
        power.saidOff();
        assertThat(power.state()).isEqualTo(PowerState.OFF);
        assertThat(bench.arm().isDone()).isTrue();
    }

    /** Where the supply can switch itself off, it is told to before power, and freed once it is off. */
    @Test
    void aWatchdogIsSetBeforePowerAndEndedAfterIt() {
        bench.supply.watchdog = true;
        power.silenceAtMost(Duration.ofMillis(7200));
        bench.running();
        assertThat(bench.supply.did.indexOf("watchdog 8")).isBetween(0, bench.supply.did.indexOf("on"));
        assertThat(bench.off().confirmed()).isTrue();
        assertThat(bench.supply.did.lastIndexOf("watchdog off"))
                .isGreaterThan(bench.supply.did.lastIndexOf("off bytes"));
    }

    private int offBytes() {
        return (int) bench.supply.did.stream().filter("off bytes"::equals).count();
    }

    @Test
    void aSupplyThatSaysOffWhileOnIsFoundOutAtTheInput() {
        bench.running().supply.ignoresOff = Integer.MAX_VALUE;
        bench.supply.saysOff = true;
        AtomicReference<Ended> ended = new AtomicReference<>();
        power.off("end of the run", ended::set);
        bench.pass(120);
        assertThat(ended.get()).isNull();
        assertThat(power.state()).isEqualTo(PowerState.NOT_CONFIRMED);
        assertThat(bench.alarms.get(0)).contains("says off, but 13.8 V stand at the input", "open the disconnect");
    }

    @Test
    void aRailThatDoesNotFallIsNamedAndLoadsGoOffAllTheSame() {
        bench.unit.stuckRail = "minus";
        Ended ended = bench.running().off();
        assertThat(ended.confirmed()).isTrue();
        assertThat(ended.railsSafe()).isFalse();
        assertThat(ended.words()).contains("minus stays at -36.7 V and does not fall");
        assertThat(bench.minus.on).isFalse();
    }

    @Test
    void aDeadLoadIsNamed() {
        bench.running().plus.dead = true;
        assertThat(bench.off().words()).contains("plus load could not be confirmed off");
        assertThat(bench.minus.on).isFalse();
    }

    @Test
    void switchingOffTwiceAndFromEveryStateWorks() {
        assertThat(bench.off().confirmed()).isTrue();
        bench.arm();
        assertThat(bench.off().confirmed()).isTrue();
        bench.running();
        AtomicInteger answers = new AtomicInteger();
        power.off("first", ended -> answers.incrementAndGet());
        power.off("second", ended -> answers.incrementAndGet());
        bench.scheduler.runUntil(() -> answers.get() == 2);
        assertThat(power.state()).isEqualTo(PowerState.OFF);
        assertThat(bench.arm().isDone()).isTrue();
    }

    @Test
    void cutOffIsOnlyTheBytesAndStopsWhatWaits() {
        bench.arm();
        power.on(result -> {});
        power.setVolts(14, result -> {});
        assertThat(power.cutOff()).isTrue();
        bench.pass(1);
        assertThat(bench.unit.output).isFalse();
        assertThat(bench.unit.volts).isEqualTo(13.8);
    }

    @Test
    void slowRailsAreToldWithTheTimeThatIsLeft() {
        bench.running();
        bench.await((amps, then) -> power.setLoad("plus", amps, then), 0.0);
        bench.await((amps, then) -> power.setLoad("minus", amps, then), 0.0);
        power.off("end", ended -> {});
        bench.pass(4);
        assertThat(power.state()).isEqualTo(PowerState.DISCHARGING);
        assertThat(power.discharge().orElseThrow().words())
                .matches("rails still at 5\\d\\.\\d V between them; about 2\\d s to the touch limit at this rate");
    }
}
