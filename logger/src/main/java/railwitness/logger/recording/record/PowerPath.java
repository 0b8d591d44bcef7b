package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Consumer;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.reading.LatestReadings;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Scheduler;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.safety.interlock.Phase;
import railwitness.safety.power.Chain;
import railwitness.safety.power.FirstPower;
import railwitness.safety.power.FirstPowerEnd;
import railwitness.safety.power.Power;
import railwitness.safety.power.Result;

/**
 * How the unit is brought to the state a step needs: armed and powered for the first time, turned on, off and on again,
 * allowed to drop out, brought back up. Each change of phase is told to the interlock before the power moves.
 */
final class PowerPath {
    private static final Duration LOOK = Duration.ofMillis(100);
    private static final Duration SLOWEST_RISE = Duration.ofSeconds(10);
    private static final Duration EMPTYING = Duration.ofSeconds(1);

    private final RunSetup setup;
    private final Scheduler scheduler;
    private final Power power;
    private final Person person;
    private final Consumer<Phase> phases;
    private final Consumer<SessionEvent> told;
    private FirstPower first;
    private Consumer<Consumer<Result>> beforeTurnOn = next -> next.accept(new Result.Done("nothing before"));
    private boolean remoteOn;
    private boolean mayBeDown;
    private Optional<FirstPowerEnd> end = Optional.empty();

    /** @param told of what the person was asked and said */
    PowerPath(RunSetup setup, Power power, Person person, Consumer<Phase> phases, Consumer<SessionEvent> told) {
        this.told = told;
        this.setup = setup;
        this.scheduler = setup.scheduler();
        this.power = power;
        this.person = person;
        this.phases = phases;
        this.first = firstPower();
    }

    private FirstPower firstPower() {
        return new FirstPower(
                scheduler, power, setup.firstPower(), setup.firstPowerReadings(), this::firstTurnOn, this::ask, phases);
    }

    /** After an off period: armed anew, the input raised in steps with the remote turn-on off, turned on, rails seen up. */
    void powerAgain(Consumer<Result> then) {
        first = firstPower();
        powerUp(on -> on.accept(new Result.Done("nothing before")), then);
    }

    /**
     * The output was switched off in the middle of the plan: whatever comes next begins with a first power.
     *
     * @param then told when the remote turn-on is off too, by the supply or by the person
     */
    void wentOff(Runnable then) {
        first = firstPower();
        mayBeDown = false;
        boolean byHand = remoteOn && !setup.drivesRemote();
        remoteOn = false;
        if (byHand) {
            person.switchRemote(false, then);
        } else {
            then.run();
        }
    }

    private void ask(String sentence, Runnable yes) {
        told.accept(new SessionEvent.Said(EventKind.ASKED, sentence));
        person.act(sentence, () -> {
            told.accept(new SessionEvent.Said(EventKind.ANSWERED, "the person says that it is right"));
            yes.run();
        });
    }

    /** What the supply said of itself, after the readings of the same round. */
    void state(Set<Condition> conditions) {
        first.state(conditions);
    }

    void heard(Reading reading) {
        first.heard(reading);
    }

    /** From when on the coming up waits for a look at the meters, ns; empty while it does not. */
    OptionalLong wantsLookFrom() {
        return first.wantsLookFrom();
    }

    /**
     * Arms, raises the input with the remote turn-on off, does what comes before turning on, turns on.
     *
     * @param before what is done at working voltage while the unit is still off; told the way on
     */
    void powerUp(Consumer<Consumer<Result>> before, Consumer<Result> then) {
        beforeTurnOn = before;
        Chain.begin()
                .then(armed -> power.arm(setup.arming(), armed))
                .then(up -> first.begin(outcome -> poweredUp(outcome, up)))
                .run(then);
    }

    /** What a powering up came to that is not done. */
    SessionEvent ended(Result result) {
        return new SessionEvent.FirstPowerEnded(end.orElseGet(() -> new FirstPowerEnd.Said(result.words())));
    }

    private void firstTurnOn(Consumer<Result> then) {
        phases.accept(Phase.STANDBY);
        Chain.begin()
                .then(beforeTurnOn::accept)
                .now(() -> phases.accept(Phase.INRUSH))
                .then(on -> remote(true, on))
                .run(then);
    }

    private void poweredUp(FirstPower.Outcome outcome, Consumer<Result> then) {
        if (outcome instanceof FirstPower.Outcome.Up) {
            Chain.begin()
                    .then(this::stillAsSet)
                    .then(open -> power.setCurrentLimit(setup.limits().workingAmps(), open))
                    .run(then);
        } else if (outcome instanceof FirstPower.Outcome.Ended ended) {
            end = Optional.of(ended.why());
            then.accept(new Result.Refused(ended.words()));
        } else {
            then.accept(new Result.Stopped("switched off meanwhile"));
        }
    }

    /** A limit that somebody turned up while the unit came up protected nothing: what it showed then counts for nothing. */
    private void stillAsSet(Consumer<Result> then) {
        InstrumentWorker<Supply> supply = setup.bench().supply();
        supply.ask(
                () -> supply.instrument().askSettings(),
                outcome -> outcome.either(
                        changed -> then.accept(
                                changed.<Result>map(words -> new Result.Refused(supply.name() + ": " + words))
                                        .orElseGet(() -> new Result.Done("set as ordered"))),
                        silent -> then.accept(new Result.Done("not asked: " + silent.getMessage()))));
    }

    /** Brings the unit into the state in which the step's set points make sense. */
    void bring(Step step, Consumer<Result> then) {
        if (step.remoteOn() != remoteOn) {
            if (step.remoteOn()) {
                turnOnAgain(then);
            } else {
                turnOff(then);
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
        Chain.begin()
                .then(range -> standbyRange(false, range))
                .now(() -> phases.accept(Phase.INRUSH))
                .then(on -> remote(true, on))
                .then(this::awaitRails)
                .run(then);
    }

    /** The unit's own capacitors empty into the bleeders; its input current is judged as standby from the start. */
    private void turnOff(Consumer<Result> then) {
        phases.accept(Phase.WORKING);
        Chain.begin()
                .then(off -> remote(false, off))
                .pause(scheduler, EMPTYING)
                .now(() -> phases.accept(Phase.STANDBY))
                .then(range -> standbyRange(true, range))
                .run(then);
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

    /** The last readings of the run. */
    LatestReadings latest() {
        return power.latest();
    }

    boolean mayBeDown() {
        return mayBeDown;
    }

    /** False once a rail that is read stands below the voltage from which that rail counts as up. */
    boolean railsUp() {
        return setup.watchedRails().stream()
                .allMatch(rail -> power.latest()
                                .number(rail)
                                .map(Measured::value)
                                .map(Math::abs)
                                .orElse(0.0)
                        >= setup.railDownVolts(rail.node()));
    }

    private void awaitRails(Consumer<Result> then) {
        Duration window = setup.firstPower().inrushWindow();
        Chain.begin()
                .pause(scheduler, window)
                .now(() -> phases.accept(Phase.WORKING))
                .until(scheduler, this::railsUp, LOOK, SLOWEST_RISE.minus(window), "the rails did not come up again")
                .now(() -> phases.accept(Phase.UP))
                .run(then);
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
