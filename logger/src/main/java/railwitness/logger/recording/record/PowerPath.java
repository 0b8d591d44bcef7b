package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Scheduler;
import railwitness.logger.recording.plan.Step;
import railwitness.safety.interlock.Phase;
import railwitness.safety.power.FirstPower;
import railwitness.safety.power.Power;
import railwitness.safety.power.Result;

/**
 * How the unit is brought to the state a step needs: armed and powered for the first time, turned on, off and on again,
 * allowed to drop out, brought back up. Each change of phase is told to the interlock before the power moves.
 */
final class PowerPath {
    private static final Duration LOOK = Duration.ofMillis(100);
    private static final Duration SLOWEST_RISE = Duration.ofSeconds(10);

    private final RunSetup setup;
    private final Scheduler scheduler;
    private final Power power;
    private final Person person;
    private final Consumer<Phase> phases;
    private final BiConsumer<String, String> told;
    private final FirstPower first;
    private final Map<Channel, Double> railVolts = new HashMap<>();
    private Consumer<Consumer<Result>> beforeTurnOn = next -> next.accept(new Result.Done("nothing before"));
    private boolean remoteOn;
    private boolean mayBeDown;

    /** @param told of what the person was asked and said: what it was, and the words */
    PowerPath(RunSetup setup, Power power, Person person, Consumer<Phase> phases, BiConsumer<String, String> told) {
        this.told = told;
        this.setup = setup;
        this.scheduler = setup.scheduler();
        this.power = power;
        this.person = person;
        this.phases = phases;
        this.first = new FirstPower(
                scheduler, power, setup.firstPower(), setup.firstPowerReadings(), this::firstTurnOn, this::ask, phases);
    }

    private void ask(String sentence, Runnable yes) {
        told.accept("asked", sentence);
        person.act(sentence, () -> {
            told.accept("answered", "the person says that it is right");
            yes.run();
        });
    }

    /** What the supply said of itself, after the readings of the same round. */
    void state(Set<Condition> conditions) {
        first.state(conditions);
    }

    void heard(Reading reading) {
        if (reading instanceof Measured measured && setup.rails().volts().contains(reading.channel())) {
            railVolts.put(reading.channel(), measured.value());
        }
        first.heard(reading);
    }

    /**
     * Arms, raises the input with the remote turn-on off, does what comes before turning on, turns on.
     *
     * @param before what is done at working voltage while the unit is still off; told the way on
     */
    void powerUp(Consumer<Consumer<Result>> before, Consumer<Result> then) {
        beforeTurnOn = before;
        power.arm(setup.arming(), armed -> {
            if (armed.isDone()) {
                first.begin(outcome -> poweredUp(outcome, then));
            } else {
                then.accept(armed);
            }
        });
    }

    private void firstTurnOn(Consumer<Result> then) {
        phases.accept(Phase.STANDBY);
        beforeTurnOn.accept(result -> {
            if (result.isDone()) {
                phases.accept(Phase.INRUSH);
                remote(true, then);
            } else {
                then.accept(result);
            }
        });
    }

    private void poweredUp(FirstPower.Outcome outcome, Consumer<Result> then) {
        if (outcome instanceof FirstPower.Outcome.Up) {
            power.setCurrentLimit(setup.limits().workingAmps(), then);
        } else if (outcome instanceof FirstPower.Outcome.Ended ended) {
            then.accept(new Result.Refused(ended.words()));
        } else {
            then.accept(new Result.Stopped("switched off meanwhile"));
        }
    }

    /** Brings the unit into the state in which the step's set points make sense. */
    void bring(Step step, Consumer<Result> then) {
        if (step.remoteOn() != remoteOn) {
            if (step.remoteOn()) {
                turnOnAgain(then);
            } else {
                phases.accept(Phase.WORKING);
                remote(false, ifDone(then, () -> awaitStandby(then)));
            }
        } else if (step.mayGiveUp()) {
            letDown();
            then.accept(new Result.Done("the unit may drop out"));
        } else if (!step.remoteOn()) {
            standbyRange(true, then);
        } else {
            then.accept(new Result.Done("as it was"));
        }
    }

    /** The meters that have a range of their own for the small drain of standby change to it, or back. */
    void standbyRange(boolean small, Consumer<Result> then) {
        setup.standbyRange(small, then);
    }

    private void turnOnAgain(Consumer<Result> then) {
        standbyRange(false, ifDone(then, () -> {
            phases.accept(Phase.INRUSH);
            remote(true, ifDone(then, () -> awaitRails(then)));
        }));
    }

    private static Consumer<Result> ifDone(Consumer<Result> otherwise, Runnable next) {
        return result -> {
            if (result.isDone()) {
                next.run();
            } else {
                otherwise.accept(result);
            }
        };
    }

    /** After a step that let the unit drop out, or that the bench could not hold: rails up again before they are watched. */
    void backUp(Consumer<Result> then) {
        mayBeDown = false;
        awaitRails(then);
    }

    /** From here the rails may go low: the bench could not hold what was asked of it. */
    void letDown() {
        mayBeDown = true;
        phases.accept(Phase.WORKING);
    }

    boolean mayBeDown() {
        return mayBeDown;
    }

    /** False once a rail that is read stands below the voltage from which that rail counts as up. */
    boolean railsUp() {
        return setup.watchedRails().stream()
                .allMatch(rail -> Math.abs(railVolts.getOrDefault(rail, 0.0)) >= setup.railDownVolts(rail.node()));
    }

    private void awaitRails(Consumer<Result> then) {
        long until = scheduler.nowNanos() + SLOWEST_RISE.toNanos();
        scheduler.after(setup.firstPower().inrushWindow(), () -> {
            phases.accept(Phase.WORKING);
            lookForRails(until, then);
        });
    }

    private void lookForRails(long until, Consumer<Result> then) {
        if (railsUp()) {
            phases.accept(Phase.UP);
            then.accept(new Result.Done("rails up"));
        } else if (scheduler.nowNanos() > until) {
            then.accept(new Result.Refused("the rails did not come up again"));
        } else {
            scheduler.after(LOOK, () -> lookForRails(until, then));
        }
    }

    /** The unit's own capacitors empty into the bleeders; its input current is judged as standby from the start. */
    private void awaitStandby(Consumer<Result> then) {
        scheduler.after(Duration.ofSeconds(1), () -> {
            phases.accept(Phase.STANDBY);
            standbyRange(true, then);
        });
    }

    private void remote(boolean on, Consumer<Result> then) {
        remoteOn = on;
        if (setup.drivesRemote()) {
            power.remote(on, then);
        } else {
            person.switchRemote(on, () -> then.accept(new Result.Done("remote turn-on switched by hand")));
        }
    }
}
