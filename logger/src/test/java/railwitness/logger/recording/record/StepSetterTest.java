package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.safety.power.Power;
import railwitness.safety.power.PowerLog;
import railwitness.safety.power.Result;

/** Nothing between two steps asks for more than either of them. */
class StepSetterTest {
    private final VirtualScheduler scheduler = new VirtualScheduler(Instant.parse("2026-11-25T10:00:00Z"));
    private final Sheets sheets = Sheets.demo();
    private final VirtualBench far = FixtureMaker.bench(sheets, List.of(), 1, scheduler::nowNanos);
    private final List<String> told = new ArrayList<>();
    private final List<Boolean> moving = new ArrayList<>();
    private boolean permitted = true;
    private Bench bench;
    private Power power;
    private RunSetup setup;
    private StepSetter setter;

    @BeforeEach
    void powered() {
        bench = Bench.open(
                sheets.bench().content(),
                far.opener(scheduler),
                scheduler,
                WorkerMaker.inline(scheduler),
                ExchangeLog.none());
        setup = new RunSetup(
                scheduler, bench, sheets.design().content(), sheets.plan().content());
        power = new Power(scheduler, bench.supply(), setup.loads(), setup.rails(), () -> permitted, new PowerLog() {
            @Override
            public void step(long atNanos, String what, String words) {
                told.add(what);
            }

            @Override
            public void alarm(long atNanos, String words) {
                told.add("alarm");
            }

            @Override
            public void alarmOver(long atNanos, String words) {
                told.add("alarm over");
            }
        });
        setter = new StepSetter(
                setup, power, new RehearsalPerson(scheduler, far), moving::add, event -> told.add(event.what()));
        done(then -> power.arm(setup.arming(), then));
        done(power::on);
        told.clear();
    }

    @AfterEach
    void close() {
        bench.close();
    }

    private interface Asked {
        void of(java.util.function.Consumer<Result> then);
    }

    private Result done(Asked asked) {
        Result[] result = new Result[1];
        asked.of(found -> result[0] = found);
        scheduler.runUntil(() -> result[0] != null);
        return result[0];
    }

    private Step step(double volts, double plus, double minus) {
        Step some = setup.steps().get(0);
        return new Step(
                "load-sweep",
                volts + " V",
                volts,
                Map.of("plus", plus, "minus", minus),
                true,
                some.timing(),
                some.hold(),
                false);
    }

    private Result set(double volts, double plus, double minus) {
        told.clear();
        return done(then -> setter.set(step(volts, plus, minus), then));
    }

    @Test
    void loadsThatFallComeFirstThenTheInputThenLoadsThatRise() {
        assertThat(set(11, 1, 1).isDone()).isTrue();
        assertThat(told).last().asString().contains("load");
        assertThat(told.get(0)).isEqualTo("voltage");
        assertThat(set(12, 0.5, 2).isDone()).isTrue();
        assertThat(told).containsExactly("plus load", "voltage", "minus load");
        assertThat(setter.volts()).isEqualTo(12);
        assertThat(setter.programmed()).isEqualTo(Map.of("plus", 0.5, "minus", 2.0));
    }

    @Test
    void whatStandsAlreadyIsNotSetAgain() {
        set(11, 1, 1);
        set(11, 1, 1);
        assertThat(told).isEmpty();
    }

    /** What leads took is not lost any more once a load falls: the supply comes back before that. */
    @Test
    void whatWasRaisedIsLoweredBeforeALoadFalls() {
        set(11, 1, 1);
        done(then -> setter.volts(11.3, then));
        told.clear();
        assertThat(done(then -> setter.set(step(11, 0.5, 2), then)).isDone()).isTrue();
        assertThat(told).containsExactly("voltage", "plus load", "minus load");
        assertThat(setter.volts()).isEqualTo(11);
        done(then -> setter.volts(11.2, then));
        assertThat(done(setter::lower).isDone()).isTrue();
        assertThat(setter.volts()).isEqualTo(11);
    }

    @Test
    void setPointsAreSaidToMoveAndToStandAgain() {
        set(11, 1, 1);
        assertThat(moving).containsExactly(true, false);
    }

    @Test
    void unloadingTakesEveryLoadOff() {
        set(11, 1, 1);
        told.clear();
        assertThat(done(setter::unload).isDone()).isTrue();
        assertThat(told).containsExactlyInAnyOrder("plus load", "minus load");
        assertThat(setter.programmed()).isEqualTo(Map.of("plus", 0.0, "minus", 0.0));
    }

    /** Where power is no longer permitted nothing of the rest is set. */
    @Test
    void afterARefusalNothingMoreIsSet() {
        set(11, 1, 1);
        permitted = false;
        assertThat(set(14, 0.5, 3).isDone()).isFalse();
        assertThat(told).containsExactly("load");
        assertThat(far.supply("supply").isOn()).isTrue(); // what to do about it is the run's business
        assertThat(moving).endsWith(true, false);
    }
}
