package railwitness.logger.recording.record;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.instrument.Scope;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Scheduler;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.points.SwitchedResistor;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.WaveformEntry;
import railwitness.safety.power.Chain;
import railwitness.safety.power.Result;

/**
 * The steps of the plan, one after the other: the bench brought to a step's set points, settling and average, what the
 * person reads by hand, what the scopes keep. It moves nothing once the run around it does something else.
 */
final class PlanSteps {
    /** The run around the steps. */
    interface Course {
        /** False while power comes on, and from the first byte of off. */
        boolean stepping();

        /** The steps before the unit is turned on are done. */
        void turningOn();

        /** Off in the midst of the plan, and back by first power. */
        void rest(Consumer<Result> then);

        /** The run cannot go on. */
        void stop(String by, String words);

        void happened(SessionEvent event);

        /** A person has typed what they read. */
        default void typed(Measured value) {
            // where a supply can switch off by itself, instruments are judged
        }

        /** The last step is done. */
        void done();
    }

    private final RunSetup setup;
    private final Scheduler scheduler;
    private final Recorder recorder;
    private final Person person;
    private final SecondLook handRead;
    private final RunListener listener;
    private final PowerPath path;
    private final StepSetter setter;
    private final Course course;
    private final Deque<Step> toDo;
    private final int steps;
    private final Set<String> limiting = new TreeSet<>();
    private Optional<Consumer<Result>> turnOn = Optional.empty();
    private StepRun current;
    private StepRun asked;
    private boolean averagingTold;
    private final StepWitness witness;
    private final SettingsHeld held;
    private final FrozenReadings frozen;
    private final Set<String> repeated = new HashSet<>();
    private final TerminalServo servo;
    private Optional<HoldCourse> hold = Optional.empty();

    PlanSteps(
            RunSetup setup,
            Recorder recorder,
            Person person,
            RunListener listener,
            PowerPath path,
            StepSetter setter,
            Course course) {
        this.setup = setup;
        this.scheduler = setup.scheduler();
        this.recorder = recorder;
        this.person = person;
        this.handRead =
                new SecondLook(person, setup.design(), setup.bench().sheet().leadResistanceOhms());
        this.listener = listener;
        this.path = path;
        this.setter = setter;
        this.course = course;
        this.toDo = new ArrayDeque<>(setup.steps());
        this.steps = toDo.size();
        this.witness = new StepWitness(setup, course::happened);
        this.held = new SettingsHeld(setup.held(), path.latest());
        this.frozen = setup.frozen();
        this.servo = new TerminalServo(setup, path, setter, course::happened, () -> !limiting.isEmpty());
    }

    /** The steps that want the unit off, and then {@code way}, which turns it on. */
    void standby(Consumer<Result> way) {
        turnOn = Optional.of(way);
        next();
    }

    void tick() {
        if (current != null) {
            current.tick(scheduler.nowNanos());
            look();
        }
        hold();
        if (current != null) {
            witness.tick(current, scheduler.nowNanos());
        }
    }

    /** A hold has a course of its own, from its first moment to its last. */
    private void hold() {
        boolean holds = current != null && current.holding() && course.stepping();
        if (holds && hold.isEmpty()) {
            StepRun mine = current;
            hold = mine.step().holding().map(by -> new HoldCourse(mine.step(), by, setup, person, bench(mine)));
            if (mine.step().cycled()) {
                held.ordered(SettingsHeld.Ordered.nothing());
            }
        } else if (!holds) {
            hold.ifPresent(HoldCourse::forget);
            hold = Optional.empty();
        }
        hold.ifPresent(HoldCourse::tick);
    }

    private HoldCourse.Bench bench(StepRun mine) {
        return new HoldCourse.Bench() {
            @Override
            public void set(Step step, Consumer<Result> then) {
                setter.set(step, result -> {
                    if (current == mine && course.stepping()) {
                        then.accept(result);
                    }
                });
            }

            @Override
            public void off(Consumer<Result> then) {
                setter.switchedOff();
                course.rest(result -> {
                    if (current == mine && course.stepping()) {
                        then.accept(result);
                    }
                });
            }

            @Override
            public void on(Consumer<Result> then) {
                path.powerAgain(result -> {
                    if (current == mine && course.stepping()) {
                        then.accept(result);
                    }
                });
            }

            @Override
            public void stop(String by, String words) {
                course.stop(by, words);
            }

            @Override
            public void happened(SessionEvent event) {
                course.happened(event);
            }

            @Override
            public void over() {
                long now = scheduler.nowNanos();
                if (mine.step().cycled()) {
                    held.ordered(new SettingsHeld.Ordered(setter.volts(), setter.programmed(), true, now));
                }
                mine.heldEnough(now);
                look();
            }
        };
    }

    /** A person ends the hold under way, if there is one. */
    void endHold() {
        hold.ifPresent(HoldCourse::endHere);
    }

    /** Whether power goes or comes in the midst of a hold: then it is looked at often. */
    boolean powering() {
        return hold.filter(HoldCourse::powering).isPresent();
    }

    void heard(Reading reading) {
        if (reading instanceof Measured measured) {
            hold.ifPresent(now -> now.heard(measured));
        }
        if (current != null) {
            witness.heard(reading);
            current.heard(reading);
            if (current.inPlace()
                    && reading instanceof Measured measured
                    && measured.requestedNanos() >= current.inPlaceNanos()) {
                frozen.heard(measured);
            }
        }
    }

    /** Whether what was set stays set; a doubt keeps the step from its average, one that stays ends the run. */
    private void held(PollResult pollResult) {
        held.heard(pollResult, limiting.contains(setup.bench().supply().name()));
        if (held.doubted()) {
            averagingTold &= !current.averaging();
            current.doubted(scheduler.nowNanos());
        }
        held.switchedOff(pollResult).or(() -> held.lost(scheduler.nowNanos())).ifPresent(words -> {
            current.giveUp(StepOutcome.NOT_REACHED, words);
            look();
            course.stop(pollResult.instrument(), words);
        });
    }

    /** From here the settings of this step stand. */
    private void inPlace(StepRun mine) {
        long now = scheduler.nowNanos();
        boolean must = mine.step().remoteOn() && !mine.step().mayGiveUp();
        held.ordered(new SettingsHeld.Ordered(setter.volts(), setter.programmed(), must, now));
        frozen.begin();
        if (!mine.step().cycled()) {
            mine.setTo(setter.volts());
        }
        mine.inPlace(now);
    }

    /** Begin and end of limiting are events, also while no step is under way. */
    void limits(PollResult pollResult) {
        boolean now = pollResult.conditions().contains(Condition.LIMITING)
                || pollResult.conditions().contains(Condition.NOT_HOLDING);
        if (now && limiting.add(pollResult.instrument())) {
            course.happened(new SessionEvent.Limiting(pollResult.instrument(), true));
        } else if (!now && limiting.remove(pollResult.instrument())) {
            course.happened(new SessionEvent.Limiting(pollResult.instrument(), false));
        }
    }

    void conditions(PollResult pollResult) {
        boolean cycling = current != null && current.holding() && current.step().cycled();
        if (cycling) {
            return; // while set points move to and fro, a moment of limiting ends nothing; it stays an event
        }
        if (current != null) {
            current.conditions(pollResult.instrument(), pollResult.conditions(), scheduler.nowNanos());
            look();
        }
        if (current != null) {
            held(pollResult);
        }
    }

    /** Ends the step under way without an average. */
    void giveUp(String reason) {
        if (current != null) {
            current.giveUp(StepOutcome.STOPPED, reason);
            look();
        }
    }

    /** Begins the next step, or ends the plan. */
    void next() {
        if (turnOn.isPresent() && (toDo.isEmpty() || toDo.peek().remoteOn())) {
            Consumer<Result> way = turnOn.get();
            turnOn = Optional.empty();
            course.turningOn();
            path.standbyRange(false, way);
            return;
        }
        Step step = toDo.poll();
        if (step == null) {
            course.done();
            return;
        }
        listener.began(steps - toDo.size(), steps, step);
        current = new StepRun(step, setup.judged(step), setup.needed(step), scheduler.nowNanos());
        held.ordered(SettingsHeld.Ordered.nothing());
        averagingTold = false;
        witness.begin();
        Optional<String> beyond = setup.beyondReach(step);
        if (beyond.isPresent()) {
            current.giveUp(StepOutcome.NOT_REACHED, beyond.get());
            look();
            return;
        }
        StepRun mine = current;
        BooleanSupplier wanted = () -> current == mine && course.stepping();
        Chain way = Chain.whileWanted(wanted).then(setter::lower);
        if (path.mayBeDown() && !step.mayGiveUp()) {
            way.then(setter::unload)
                    .then(set -> setter.volts(step.inputVolts(), set))
                    .then(path::backUp);
        }
        way.then(up -> path.bring(step, up))
                .then(set -> setter.set(step, set))
                .then(at -> servo.hold(step, wanted, at))
                .run(result -> arrived(mine, result));
    }

    /** Whether a step is under way that can begin anew: one whose load is not held for its own sake. */
    boolean canBeginAnew() {
        return current != null && current.step().hold().isZero();
    }

    /** A person wants the step under way once more, its set points as they stand; false where that cannot be now. */
    boolean repeat() {
        if (!canBeginAnew() || !current.inPlace() || current == asked || current.waitingForPerson()) {
            return false;
        }
        again(current.step(), "a person wants it once more");
        return true;
    }

    /** The step under way, where there is one, is to be taken from its begin once there is power again; a hold too. */
    void putBack() {
        if (current != null) {
            toDo.addFirst(current.step());
        }
        current = null;
        hold.ifPresent(HoldCourse::forget);
        hold = Optional.empty();
        averagingTold = false;
        held.ordered(SettingsHeld.Ordered.nothing());
    }

    /** Where off came between, whoever sent it ends the run. */
    private void arrived(StepRun mine, Result result) {
        if (current != mine) {
            return;
        }
        if (result.isDone()) {
            inPlace(mine);
        } else if (result instanceof Result.Refused) {
            course.stop("instrument", result.words());
        }
    }

    /** Looks whether the step has moved on. */
    private void look() {
        StepRun step = current;
        if (step == null) {
            return;
        }
        if (step.averaging() && !averagingTold) {
            averagingTold = true;
            listener.averaging(step.step(), step.settled());
            setter.resistors()
                    .forEach((rail, ohms) -> keep(SwitchedResistor.reading(rail, ohms, scheduler.nowNanos())));
            readByHand(step);
        }
        if (current != step) {
            return; // whoever was asked ended it at once
        }
        step.entry().ifPresent(entry -> ended(step, entry));
    }

    /** A point counts only where the supply is still set as it was ordered. */
    private void ended(StepRun step, StepEntry entry) {
        if (entry.outcome() != StepOutcome.MEASURED || !course.stepping()) {
            stepEnded(entry);
        } else if (asked != step) {
            asked = step;
            InstrumentWorker<Supply> supply = setup.bench().supply();
            supply.ask(
                    () -> supply.instrument().askSettings(),
                    outcome -> outcome.either(
                            changed -> confirmed(step, entry, changed),
                            silent -> confirmed(step, entry, Optional.empty())));
        }
    }

    private void confirmed(StepRun step, StepEntry entry, Optional<String> changed) {
        if (current != step) {
            return; // off came between, and has ended the step
        }
        if (changed.isEmpty()) {
            stepEnded(entry);
            return;
        }
        String supply = setup.bench().supply().name();
        stepEnded(entry.notReached(supply + ": " + changed.get()));
        course.stop(supply, supply + ": " + changed.get());
    }

    /** Meters without a wire, one after the other; the average goes on until the last was read. */
    private void readByHand(StepRun step) {
        step.waitForPerson(!setup.handRead().isEmpty());
        Chain meters = Chain.whileWanted(() -> current == step && course.stepping());
        Tour.of(setup.handRead())
                .forEach(meter -> meters.then(done -> handRead.read(meter, step.step(), value -> {
                    long now = scheduler.nowNanos();
                    value.ifPresent(number -> keep(new Measured(meter.reads(), number, now, now)));
                    done.accept(new Result.Done("read"));
                })));
        meters.run(read -> step.waitForPerson(false));
    }

    /** A value that no instrument sent. */
    private void keep(Measured value) {
        recorder.reading(value);
        witness.heard(value);
        listener.heard(value);
        course.typed(value);
    }

    /** A meter that stood still has its step once more; then the run ends without a point of it. */
    private Optional<String> stoodStill(StepEntry entry) {
        return entry.outcome() == StepOutcome.MEASURED && course.stepping()
                ? frozen.over(current.step())
                : Optional.empty();
    }

    /** The step under way has a gap in its readings: it is settled and averaged anew. */
    void repeat(String words) {
        if (current != null && current.inPlace() && !current.holding()) {
            again(current.step(), words);
        }
    }

    private void again(Step step, String words) {
        course.happened(new SessionEvent.Repeated(step.stage(), step.name(), words));
        current = new StepRun(step, setup.judged(step), setup.needed(step), scheduler.nowNanos());
        averagingTold = false;
        witness.begin();
        inPlace(current);
    }

    private void stepEnded(StepEntry found) {
        Step step = current.step();
        Optional<String> still = stoodStill(found);
        if (still.isPresent() && repeated.add(step.stage() + " " + step.name())) {
            again(step, still.get());
            return;
        }
        StepEntry entry = still.map(words -> found.notReached(words)).orElse(found);
        current = null;
        recorder.add(entry);
        listener.ended(step, entry);
        witness.ended(entry);
        if (entry.outcome() == StepOutcome.NOT_REACHED) {
            course.happened(new SessionEvent.NotReached(step.stage(), step.name(), entry.reason()));
        }
        if (!course.stepping()) {
            return;
        }
        if (still.isPresent()) {
            course.stop("meter", still.get());
            return;
        }
        if (step.mayGiveUp()) {
            droppedOut(step, entry);
        } else if (entry.outcome() == StepOutcome.NOT_REACHED && !limiting.isEmpty()) {
            path.letDown();
        }
        List<InstrumentWorker<Scope>> scopes = entry.outcome() == StepOutcome.MEASURED ? setup.scopes(step) : List.of();
        scheduler.post(() -> look(scopes));
    }

    /** Every scope keeps a waveform while the step's set points still stand; one that fails holds nothing up. */
    private void look(List<InstrumentWorker<Scope>> scopes) {
        Chain looks = Chain.whileWanted(course::stepping);
        scopes.forEach(worker -> looks.then(done -> look(worker, done)));
        looks.run(result -> goOn());
    }

    private void look(InstrumentWorker<Scope> worker, Consumer<Result> done) {
        long askedNanos = scheduler.nowNanos();
        worker.ask(worker.instrument()::waveform, outcome -> {
            if (course.stepping()) {
                outcome.either(
                        waveform -> recorder.add(new WaveformEntry(askedNanos, waveform)),
                        why -> course.happened(new SessionEvent.Said(EventKind.LINE, why.getMessage())));
            }
            done.accept(new Result.Done("looked"));
        });
    }

    private void droppedOut(Step step, StepEntry entry) {
        if (entry.outcome() == StepOutcome.NOT_REACHED || !path.railsUp()) {
            course.happened(new SessionEvent.DroppedOut(step.inputVolts()));
            while (!toDo.isEmpty() && toDo.peek().mayGiveUp()) {
                toDo.poll();
            }
        }
    }

    private void goOn() {
        if (course.stepping() && current == null) {
            next();
        }
    }
}
