package railwitness.logger.record;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.Scope;
import railwitness.drivers.instrument.Station;
import railwitness.drivers.instrument.Sweep;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Agenda;
import railwitness.logger.plan.Step;
import railwitness.logger.store.EventEntry;
import railwitness.logger.store.Recorder;
import railwitness.logger.store.SessionState;
import railwitness.logger.store.StepEntry;
import railwitness.logger.store.StepOutcome;
import railwitness.logger.store.StoreException;
import railwitness.logger.store.WaveformEntry;
import railwitness.safety.interlock.Event;
import railwitness.safety.interlock.Interlock;
import railwitness.safety.interlock.Phase;
import railwitness.safety.interlock.Trip;
import railwitness.safety.power.Power;
import railwitness.safety.power.PowerLog;
import railwitness.safety.power.Result;

/**
 * One session from first reading to discharged rails. It lives on the agenda: every reading passes the interlock first,
 * then the recorder, then the step. Whatever happens (end of the plan, a trip, a person's stop, a store that cannot
 * write, a mistake in the program) leads to the same switching off.
 */
public final class Run implements PowerLog {
    private static final Duration TICK = Duration.ofMillis(100);
    private static final Duration LISTEN_AT_MOST = Duration.ofSeconds(15);
    private static final Duration LAST_ANSWER = Duration.ofSeconds(2);

    private enum Part {
        LISTENING,
        POWERING,
        STEPPING,
        SWITCHING_OFF,
        OVER
    }

    private final RunSetup setup;
    private final Agenda agenda;
    private final Recorder recorder;
    private final RunListener listener;
    private final Person person;
    private final Guard guard;
    private final Power power;
    private final PowerPath path;
    private final StepSetter setter;
    private final Polling polling;
    private final Deque<Step> toDo;
    private final int steps;
    private final Set<String> limiting = new TreeSet<>();
    private Part part = Part.LISTENING;
    private volatile Interlock interlock;
    private StepRun current;
    private boolean averagingTold;
    private boolean changing;
    private volatile long awakeNanos;
    private long wallDueNanos;
    private Optional<Consumer<Result>> turnOn = Optional.empty();
    private Consumer<RunEnd> then;

    public Run(RunSetup setup, Recorder recorder, Person person, RunListener listener, Guard guard) {
        this.setup = setup;
        this.agenda = setup.agenda();
        this.recorder = recorder;
        this.listener = listener;
        this.person = person;
        this.guard = guard;
        this.interlock = Interlock.of(setup.watches(), setup.patience(), agenda.nowNanos());
        this.power = new Power(agenda, setup.bench().supply(), setup.loads(), setup.rails(), this::permitted, this);
        this.path = new PowerPath(setup, power, person, this::enter);
        this.setter = new StepSetter(setup, power, person, this::moving);
        this.polling = new Polling(agenda, setup.interval(), this::awake, this::swept, this::unanswered);
        this.toDo = new ArrayDeque<>(setup.steps());
        this.steps = toDo.size();
    }

    /** Asked from the instruments' threads too. */
    private boolean permitted() {
        boolean awake = agenda.nowNanos() - awakeNanos <= setup.patience().toNanos();
        return awake && interlock.permitted() && guard.guarding();
    }

    /** Begins; {@code then} is told once, on the agenda, when everything is off and the session is closed. */
    public void start(Consumer<RunEnd> whenOver) {
        then = whenOver;
        happened("begin", "listening to the instruments before power");
        guard.lacking().ifPresent(words -> happened("no guardian", words));
        setup.watches().forEach(watch -> happened("watched", watch.name() + ", no older than " + seconds(watch.age())));
        polling.start(setup.bench().stations());
        agenda.after(LISTEN_AT_MOST, this::listenedLongEnough);
        tick();
    }

    /** A person, or the program itself, wants power off: the same path as every other end. */
    public void stop(String by, String words) {
        judge(new Event.Stop(by, words, agenda.nowNanos()));
    }

    /** The bytes of off and nothing else, from any thread. */
    public void cutOff() {
        power.cutOff();
    }

    public Power power() {
        return power;
    }

    /** What is watched, with its limits. */
    public java.util.List<railwitness.safety.interlock.Watch> watches() {
        return setup.watches();
    }

    /** A person's remark, kept with the readings. */
    public void note(String author, String text) {
        long now = agenda.nowNanos();
        recorder.offer(writer -> writer.note(now, author, text));
    }

    /** The recorder can no longer write: the run ends safely. From any thread. */
    public void storeTrouble(StoreException trouble) {
        agenda.post(() -> stop("recorder", trouble.getMessage()));
    }

    private void tick() {
        if (part == Part.OVER) {
            return;
        }
        awake();
        if (part == Part.LISTENING && interlock.permitted()) {
            part = Part.POWERING;
            path.powerUp(this::standbySteps, this::poweredUp);
        }
        if (current != null && part == Part.STEPPING) {
            current.tick(agenda.nowNanos());
            look();
        }
        keepWallClock();
        agenda.after(TICK, this::tick);
    }

    /** Before anything is sent: a program that stood still trips first. */
    private void awake() {
        guard.beat();
        awakeNanos = agenda.nowNanos();
        judge(new Event.Tick(awakeNanos));
        if (!guard.guarding()) {
            stop("guardian", "the guardian no longer watches: " + guard.words());
        }
    }

    /** Once a second the wall clock is held against the session's axis; a step or a sleep becomes an event. */
    private void keepWallClock() {
        long now = agenda.nowNanos();
        if (now >= wallDueNanos) {
            wallDueNanos = now + 1_000_000_000L;
            Instant wall = agenda.wallNow();
            recorder.offer(writer -> writer.wall(now, wall));
        }
    }

    private void listenedLongEnough() {
        if (part == Part.LISTENING) {
            stop("interlock", "no power: " + String.join("; ", interlock.against()));
        }
    }

    private void swept(Sweep sweep) {
        for (Reading reading : sweep.readings()) {
            if (changing) {
                judge(new Event.Changed(agenda.nowNanos()));
            }
            judge(new Event.Read(reading));
            recorder.reading(reading);
            power.heard(reading);
            path.heard(reading);
            if (current != null) {
                current.heard(reading);
            }
        }
        conditions(sweep);
        listener.swept(sweep);
    }

    private void conditions(Sweep sweep) {
        if (part == Part.SWITCHING_OFF || part == Part.OVER) {
            return;
        }
        boolean now = sweep.conditions().contains(Condition.LIMITING)
                || sweep.conditions().contains(Condition.NOT_HOLDING);
        if (now && limiting.add(sweep.instrument())) {
            happened("limiting", sweep.instrument() + " limits or cannot hold its set point");
        } else if (!now && limiting.remove(sweep.instrument())) {
            happened("limiting over", sweep.instrument() + " holds again");
        }
        if (sweep.conditions().contains(Condition.PROTECTION)) {
            stop(sweep.instrument(), sweep.instrument() + " switched itself off: its protection tripped");
        }
        if (current != null && part == Part.STEPPING) {
            current.conditions(sweep.instrument(), sweep.conditions(), agenda.nowNanos());
            look();
        }
    }

    private void unanswered(LineException why) {
        happened("line", why.getMessage());
    }

    private void judge(Event event) {
        interlock = interlock.next(event);
        Optional<Trip> trip = interlock.trip();
        if (trip.isPresent() && part != Part.SWITCHING_OFF && part != Part.OVER) {
            tripped(trip.get());
        }
    }

    private void tripped(Trip trip) {
        boolean person = trip.kind() == Trip.Kind.STOPPED && trip.what().equals(RunEnd.PERSON);
        happened(person ? "stop" : "trip", trip.words());
        switchOff(person ? SessionState.STOPPED : SessionState.TRIPPED, trip.words());
    }

    private void enter(Phase phase) {
        judge(new Event.Enter(phase, agenda.nowNanos()));
    }

    private void poweredUp(Result result) {
        if (part != Part.POWERING) {
            return;
        }
        if (!result.isDone()) {
            happened("first power", result.words());
            stop("first power", result.words());
            return;
        }
        part = Part.STEPPING;
        nextStep();
    }

    /** The steps that want the unit off come while first power waits at working voltage. */
    private void standbySteps(Consumer<Result> way) {
        if (part == Part.POWERING) {
            turnOn = Optional.of(way);
            part = Part.STEPPING;
            nextStep();
        }
    }

    private void nextStep() {
        if (turnOn.isPresent() && (toDo.isEmpty() || toDo.peek().remoteOn())) {
            Consumer<Result> way = turnOn.get();
            turnOn = Optional.empty();
            part = Part.POWERING;
            path.standbyRange(false, way);
            return;
        }
        Step step = toDo.poll();
        if (step == null) {
            happened("end", "the plan is done");
            switchOff(SessionState.COMPLETE, "the plan is done");
            return;
        }
        listener.began(steps - toDo.size(), steps, step);
        current = new StepRun(step, setup.judged(step), agenda.nowNanos());
        averagingTold = false;
        Optional<String> beyond = setup.beyondReach(step);
        if (beyond.isPresent()) {
            current.giveUp(StepOutcome.NOT_REACHED, beyond.get());
            look();
            return;
        }
        StepRun mine = current;
        recovered(
                step,
                up -> ifStill(
                        mine,
                        up,
                        () -> path.bring(
                                step,
                                result -> ifStill(mine, result, () -> {
                                    setter.set(step, set -> ifStill(mine, set, () -> mine.inPlace(agenda.nowNanos())));
                                }))));
    }

    /** While set points move, values worked out from several readings would mix before and after. */
    private void moving(boolean now) {
        changing = now;
        judge(new Event.Changed(agenda.nowNanos()));
    }

    /** Where the unit may have dropped out, it is brought up without load before the step. */
    private void recovered(Step step, Consumer<Result> up) {
        if (!path.mayBeDown() || step.mayGiveUp()) {
            up.accept(new Result.Done("rails up"));
            return;
        }
        setter.unload(empty -> {
            if (empty.isDone()) {
                setter.volts(step.inputVolts(), set -> {
                    if (set.isDone()) {
                        path.backUp(up);
                    } else {
                        up.accept(set);
                    }
                });
            } else {
                up.accept(empty);
            }
        });
    }

    private void ifStill(StepRun step, Result result, Runnable go) {
        if (current != step || part != Part.STEPPING) {
            return;
        }
        if (result.isDone()) {
            go.run();
        } else {
            stop("instrument", result.words());
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
            readByHand(step, setup.handRead().iterator());
        }
        step.entry().ifPresent(this::stepEnded);
    }

    /** Meters without a wire, one after the other; the average goes on until the last was read. */
    private void readByHand(StepRun step, Iterator<HandRead> meters) {
        step.waitForPerson(meters.hasNext());
        if (meters.hasNext()) {
            HandRead meter = meters.next();
            person.read(meter, value -> {
                long now = agenda.nowNanos();
                value.ifPresent(number -> recorder.reading(new Measured(meter.reads(), number, now, now)));
                readByHand(step, meters);
            });
        }
    }

    private void stepEnded(StepEntry entry) {
        Step step = current.step();
        current = null;
        recorder.add(entry);
        listener.ended(step, entry);
        if (entry.outcome() == StepOutcome.NOT_REACHED) {
            happened("not reached", step.stage() + " " + step.name() + ": " + entry.reason());
        }
        if (part != Part.STEPPING) {
            return;
        }
        if (step.mayGiveUp()) {
            droppedOut(step, entry);
        } else if (entry.outcome() == StepOutcome.NOT_REACHED && !limiting.isEmpty()) {
            path.letDown();
        }
        List<Station<Scope>> scopes = entry.outcome() == StepOutcome.MEASURED ? setup.scopes(step) : List.of();
        agenda.post(() -> look(scopes.iterator()));
    }

    /** Every scope keeps a waveform while the step's set points still stand; one that fails holds nothing up. */
    private void look(Iterator<Station<Scope>> scopes) {
        if (part != Part.STEPPING || !scopes.hasNext()) {
            goOn();
            return;
        }
        Station<Scope> station = scopes.next();
        long askedNanos = agenda.nowNanos();
        station.ask(station.instrument()::waveform, outcome -> {
            if (part == Part.STEPPING) {
                outcome.either(
                        waveform -> recorder.add(new WaveformEntry(askedNanos, waveform)),
                        why -> happened("line", why.getMessage()));
                look(scopes);
            }
        });
    }

    private void droppedOut(Step step, StepEntry entry) {
        if (entry.outcome() == StepOutcome.NOT_REACHED || !path.railsUp()) {
            happened("drop-out", "the rails gave up at a supply setting of " + step.inputVolts() + " V");
            while (!toDo.isEmpty() && toDo.peek().mayGiveUp()) {
                toDo.poll();
            }
        }
    }

    private void goOn() {
        if (part == Part.STEPPING && current == null) {
            nextStep();
        }
    }

    private void switchOff(SessionState state, String reason) {
        part = Part.SWITCHING_OFF;
        power.off(reason, ended -> over(state, ended.confirmed(), ended.words()));
        if (current != null) {
            current.giveUp(StepOutcome.STOPPED, reason);
            look();
        }
    }

    private void over(SessionState state, boolean confirmed, String words) {
        if (part == Part.OVER) {
            return;
        }
        part = Part.OVER;
        polling.stop();
        power.release();
        happened("off", words);
        guard.over(confirmed);
        recorder.finish(state);
        then.accept(new RunEnd(state, confirmed, words));
    }

    /**
     * A mistake in the program ended the agenda: the bytes of off, the supply's own word, and the guardian, which
     * switches the loads off in their order.
     */
    void brokenOff(Throwable mistake) {
        part = Part.OVER;
        polling.stop();
        boolean off = power.lastWord(LAST_ANSWER);
        happened("trip", "a mistake in the program ended the run: " + mistake);
        if (!off) {
            alarm(agenda.nowNanos(), "the supply did not say off; it may be on, and it " + Power.OPEN);
        }
        happened("off", off ? "output off; the rails were not watched: take them as live" : "the supply " + Power.OPEN);
        guard.over(false);
        recorder.finish(SessionState.TRIPPED);
    }

    private void happened(String what, String text) {
        told(agenda.nowNanos(), what, text);
    }

    private void told(long nanos, String what, String text) {
        recorder.add(new EventEntry(nanos, what, text));
        listener.happened(nanos / 1e9, what, text);
    }

    @Override
    public void step(long atNanos, String what, String words) {
        told(atNanos, what, words);
    }

    @Override
    public void alarm(long atNanos, String words) {
        told(atNanos, "ALARM", words);
    }

    @Override
    public void alarmOver(long atNanos, String words) {
        told(atNanos, "alarm over", words);
    }

    private static String seconds(Duration duration) {
        return duration.toMillis() / 1000.0 + " s";
    }

    Set<Channel> watched() {
        Set<Channel> all = new TreeSet<>();
        setup.watches().forEach(watch -> all.addAll(watch.subject().channels()));
        return all;
    }
}
