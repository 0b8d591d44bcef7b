package railwitness.logger.recording.record;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Due;
import railwitness.drivers.time.Scheduler;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.Mistake;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.StoreException;
import railwitness.safety.interlock.Event;
import railwitness.safety.interlock.Interlock;
import railwitness.safety.interlock.Phase;
import railwitness.safety.interlock.Trip;
import railwitness.safety.power.Ended;
import railwitness.safety.power.Power;
import railwitness.safety.power.PowerLog;
import railwitness.safety.power.PowerState;
import railwitness.safety.power.Result;

/**
 * One session from first reading to discharged rails. It lives on the scheduler: every reading passes the interlock first,
 * then the recorder, then the step. Whatever happens (end of the plan, a trip, a person's stop, a store that cannot
 * write, a mistake in the program) leads to the same switching off.
 */
public final class Run implements PowerLog {
    private static final Duration OFTEN = Duration.ofMillis(500);
    private static final Duration TICK = Duration.ofMillis(100);
    private static final Duration LISTEN_AT_MOST = Duration.ofSeconds(15);
    private static final Duration LEAST_SILENCE = Duration.ofSeconds(5);
    private static final Duration LAST_ANSWER = Duration.ofSeconds(2);

    /** What is away and tells nothing of the unit's safety is waited for so long before the output goes off for it. */
    private static final Duration AWAY_UNDER_POWER = Duration.ofSeconds(3);

    /** Who was pulled out is looked for so long, with the output off; then the session ends. */
    static final Duration AWAY_AT_MOST = Duration.ofMinutes(10);

    private static final Duration ASK_AGAIN = Duration.ofSeconds(1);
    private static final int MOST_ASKED_AGAIN = 60;
    private static final int MOST_MISTAKES = 5;
    private static final String NO_WATCHDOG = "this supply is not known to switch itself off when it hears nothing:"
            + " whatever ends this program and its guardian together leaves the output on; keep the disconnect within"
            + " reach";
    private static final String DISCONNECT =
            "The output is NOT confirmed off. Open the hand disconnect now. Off is sent"
                    + " every second until the supply says that it is off";

    private enum Part {
        LISTENING,
        POWERING,
        STEPPING,
        PAUSED,
        SWITCHING_OFF,
        OVER
    }

    private final RunSetup setup;
    private final Scheduler scheduler;
    private final Recorder recorder;
    private final RunListener listener;
    private final Guard guard;
    private final Person person;
    private final Person unhurried;
    private final StepSetter setter;
    private final Power power;
    private final PowerPath path;
    private final Polling polling;
    private final PlanSteps steps;
    private final WindingSteps windings;
    private final Looks looks;
    private final Replugged replugged = new Replugged();
    private Part part = Part.LISTENING;
    private volatile Interlock interlock;
    private boolean changing;
    private boolean pauseWanted;
    private int askedAgain;
    private Due nextTick;
    private int mistakes;
    private boolean cooled;
    private SessionState ending = SessionState.TRIPPED;
    private volatile long awakeNanos;
    private long wallDueNanos;
    private Consumer<RunEnd> then;

    public Run(RunSetup setup, Recorder recorder, Person person, RunListener listener, Guard guard) {
        this.setup = setup;
        this.scheduler = setup.scheduler();
        this.recorder = recorder;
        this.listener = listener;
        this.guard = guard;
        this.interlock = Interlock.of(setup.watches(), setup.patience(), scheduler.nowNanos());
        this.power = new Power(scheduler, setup.bench().supply(), setup.loads(), setup.rails(), this::permitted, this);
        this.awakeNanos = scheduler.nowNanos();
        this.power.silenceAtMost(silence(setup.interval()));
        this.unhurried = person;
        this.person = new PatientPerson(scheduler, person, setup.answerAtMost(), words -> stop("person asked", words));
        this.path = new PowerPath(setup, power, this.person, this::enter, this::happened);
        this.setter = new StepSetter(setup, power, this.person, this::moving, this::happened);
        this.steps = new PlanSteps(setup, recorder, this.person, listener, path, setter, new OwnCourse());
        this.windings = new WindingSteps(setup, power, this.person, recorder, listener, new OwnCourse(), this::enter);
        this.looks = new Looks(setup, person, this::typed);
        this.polling = new Polling(scheduler, this::interval, this::awake, this::swept, this::unanswered);
    }

    /** The supply is asked once in every interval; three may be missed. */
    private static Duration silence(Duration interval) {
        Duration slow = interval.multipliedBy(3).plus(Duration.ofSeconds(2));
        return slow.compareTo(LEAST_SILENCE) > 0 ? slow : LEAST_SILENCE;
    }

    /** A burn-in may ask slowly; power that comes and goes is looked at often. */
    private Duration interval() {
        Duration wanted = setup.interval();
        boolean often = (part != Part.STEPPING || steps.powering()) && wanted.compareTo(OFTEN) > 0;
        return often ? OFTEN : wanted;
    }

    /** Asked from the instruments' threads too. */
    private boolean permitted() {
        boolean awake = scheduler.nowNanos() - awakeNanos <= setup.patience().toNanos();
        return awake && interlock.permitted() && guard.guarding();
    }

    /** Begins; {@code then} is told once, on the scheduler, when everything is off and the session is closed. */
    public void start(Consumer<RunEnd> whenOver) {
        then = whenOver;
        said(EventKind.BEGIN, "listening to the instruments before power");
        guard.lacking().ifPresent(words -> said(EventKind.NO_GUARDIAN, words));
        setup.bench().workers().forEach(worker -> worker.instrument()
                .lacks()
                .forEach(words -> happened(new SessionEvent.LeftOut(worker.name(), words))));
        if (guard.needed() && !setup.bench().supply().instrument().hasWatchdog()) {
            said(EventKind.NO_WATCHDOG, NO_WATCHDOG);
        }
        setup.watches().stream()
                .filter(watch -> !watch.bySight())
                .forEach(watch -> happened(
                        new SessionEvent.Watched(watch.name(), watch.age().toMillis() / 1e3)));
        polling.start(setup.bench().workers().stream()
                .filter(worker -> !setup.isByHand() || worker != setup.bench().supply())
                .toList());
        scheduler.after(LISTEN_AT_MOST, this::listenedLongEnough);
        tick();
    }

    /** A person wants power off: the same path as every other end. Who wants it again has it sent again. */
    public void stop(String words) {
        if (part == Part.SWITCHING_OFF) {
            said(EventKind.STOP, words);
            power.off(words, ended -> {});
        } else {
            judge(new Event.PersonStop(words, scheduler.nowNanos()));
        }
    }

    /** A person wants the step under way once more; between two steps nothing happens. */
    public void repeatStep() {
        if (part == Part.STEPPING && !windings.busy()) {
            steps.repeat();
        }
    }

    /**
     * A person wants the output off here and the plan to go on later: the step under way is taken from its begin then, after
     * a first power as at the beginning. Waits for the next step where none is under way; a held load is not paused.
     */
    public void pause() {
        pauseWanted = part == Part.LISTENING || part == Part.POWERING || part == Part.STEPPING;
        pauseIfWanted();
    }

    private void pauseIfWanted() {
        if (!pauseWanted || part != Part.STEPPING || windings.busy() || !steps.canBeginAnew()) {
            return;
        }
        pause("a person wants the output off here", "paused by a person");
    }

    private void pause(String words, String reason) {
        pauseWanted = false;
        askedAgain = 0;
        part = Part.PAUSED;
        changing = false; // what was being set is given up
        said(EventKind.PAUSED, words + "; the step is taken from its begin later");
        person.forget();
        looks.forget();
        steps.putBack();
        enter(Phase.OFF);
        power.off(reason, this::paused);
    }

    private void paused(Ended ended) {
        if (part != Part.PAUSED) {
            return;
        }
        if (!ended.confirmed()) {
            stop("pause", ended.words());
            return;
        }
        askToGoOn(ended.words());
    }

    private void askToGoOn(String words) {
        String back = replugged.any() ? ". Put back: " + replugged.names() + " (its port has gone)" : "";
        unhurried.act(
                "Paused: " + words + back + ". Say so when power may come on again and the plan go on", this::mayGoOn);
    }

    /** Their word is not enough while an instrument is away, or what it reads is against power; they are asked again. */
    private void mayGoOn() {
        boolean against = replugged.any() || !interlock.permitted() && askedAgain < MOST_ASKED_AGAIN;
        if (part != Part.PAUSED || !against) {
            goOn();
            return;
        }
        askedAgain++;
        String why = replugged.any()
                ? replugged.names() + " is not there yet"
                : "not yet: " + String.join("; ", interlock.against());
        scheduler.after(ASK_AGAIN, () -> {
            if (part == Part.PAUSED) {
                askToGoOn(why);
            }
        });
    }

    private void goOn() {
        if (part == Part.PAUSED) {
            said(EventKind.GOES_ON, "a person lets the plan go on");
            path.wentOff(() -> setter.wentOff(unloaded -> {
                if (part == Part.PAUSED && unloaded.isDone()) {
                    powerUp();
                } else if (part == Part.PAUSED) {
                    stop("pause", unloaded.words());
                }
            }));
        }
    }

    /** Another part of the program wants power off. */
    private void stop(String by, String words) {
        judge(new Event.Stop(by, words, scheduler.nowNanos()));
    }

    /**
     * A person wants power off, from any thread; returns at once. Their stop stands in the queue before anything that the
     * off does to requests under way can be taken for a fault of an instrument; then the bytes of off leave, without
     * waiting for the queue.
     */
    public void stopNow(String words) {
        scheduler.post(() -> stop(words));
        power.cutOff();
    }

    /** Whether the output may be on, or is about to. */
    public boolean mayBeOn() {
        return part != Part.LISTENING && part != Part.OVER;
    }

    /** The first thing a person will be asked while the output is on, in words; empty where nobody is needed. */
    public Optional<String> asksUnderPower() {
        return setup.asksUnderPower();
    }

    /** False where the run no longer goes on, whatever it should do; from any thread. */
    public boolean awake(Duration longest) {
        return scheduler.nowNanos() - awakeNanos <= longest.toNanos();
    }

    public Power power() {
        return power;
    }

    /** What is watched, with its limits. */
    public java.util.List<railwitness.safety.interlock.Watch> watches() {
        return setup.watches();
    }

    /** A person ends the hold under way before its time; the plan goes on. On the scheduler. */
    public void endHold() {
        if (part == Part.STEPPING) {
            steps.endHold();
        }
    }

    /** A person's remark, kept with the readings. */
    public void note(String author, String text) {
        long now = scheduler.nowNanos();
        recorder.offer(writer -> writer.note(now, author, text));
    }

    /** The recorder can no longer write: the run ends safely. From any thread. */
    public void storeTrouble(StoreException trouble) {
        scheduler.post(() -> stop("recorder", trouble.getMessage()));
    }

    private void tick() {
        if (part == Part.OVER) {
            return;
        }
        awake();
        if (part == Part.LISTENING && interlock.permitted() && !replugged.any()) {
            begin();
        }
        if (part == Part.STEPPING) {
            steps.tick();
            windings.tick();
            pauseIfWanted();
        }
        if (part == Part.POWERING) {
            looks.firstPower(path.wantsLookFrom());
        } else if ((part == Part.SWITCHING_OFF || part == Part.PAUSED)
                && setup.isByHand()
                && power.state() == PowerState.DISCHARGING) {
            looks.discharge(power.discharge());
        }
        keepWallClock();
        nextTick = scheduler.after(TICK, this::tick);
    }

    /** A person read it: judged, kept and taken like what an instrument sent. */
    private void typed(Measured value) {
        recorder.reading(value);
        listener.heard(value);
        judgeTyped(value);
        path.heard(value);
    }

    private void judgeTyped(Measured value) {
        judge(new Event.Read(value));
        power.heard(value);
    }

    /** Nobody is left who could answer: where only a hand can switch off, waiting for it has no end. */
    public void nobodyThere() {
        if (part == Part.SWITCHING_OFF && setup.isByHand()) {
            power.abandon();
        }
    }

    /** Nobody did what was asked at a supply that has only knobs. */
    void handSilent(String words) {
        stop("person asked", words);
    }

    private void begin() {
        if (setup.plan().transformer().isPresent()) {
            part = Part.STEPPING;
            windings.begin(setup.plan().transformer().get(), this::measuredAlone);
        } else {
            powerUp();
        }
    }

    private void powerUp() {
        part = Part.POWERING;
        if (replugged.any()) {
            pauseWithout(replugged.names());
            return;
        }
        path.powerUp(this::standbySteps, this::poweredUp);
    }

    /** The transformer goes into the unit only where the plan goes on. */
    private void measuredAlone() {
        Optional<String> against = windings.against();
        if (setup.plan().powersUnit() && against.isPresent()) {
            said(EventKind.NOT_POWERED, "the transformer is not to be powered like this: " + against.get());
            switchOff(SessionState.COMPLETE, "the transformer is not to be powered like this");
        } else if (setup.plan().powersUnit()) {
            person.fit(WindingPrompts.FIT, () -> {
                if (part == Part.STEPPING) {
                    powerUp();
                }
            });
        } else {
            new OwnCourse().done();
        }
    }

    /** Before anything is sent: a program that stood still trips first, and only then counts as awake. */
    private void awake() {
        long now = scheduler.nowNanos();
        judge(new Event.Tick(now));
        awakeNanos = now;
        guard.beat();
        if (!guard.guarding()) {
            stop("guardian", "the guardian no longer watches: " + guard.words());
        }
    }

    /** Once a second the wall clock is held against the session's axis; a step or a sleep becomes an event. */
    private void keepWallClock() {
        long now = scheduler.nowNanos();
        if (now >= wallDueNanos) {
            wallDueNanos = now + 1_000_000_000L;
            Instant wall = scheduler.wallNow();
            recorder.offer(writer -> writer.wall(now, wall));
        }
    }

    private void listenedLongEnough() {
        if (part == Part.LISTENING && replugged.any()) {
            scheduler.after(LISTEN_AT_MOST, this::listenedLongEnough);
        } else if (part == Part.LISTENING) {
            stop("interlock", "no power: " + String.join("; ", interlock.against()));
        }
    }

    private void swept(PollResult pollResult) {
        ports(pollResult);
        for (Reading reading : pollResult.readings()) {
            if (changing) {
                judge(new Event.Changed(scheduler.nowNanos()));
            }
            judge(new Event.Read(reading));
            recorder.reading(reading);
            power.heard(reading);
            path.heard(reading);
            steps.heard(reading);
            windings.heard(reading);
        }
        if (part == Part.LISTENING && isOffSaid(pollResult)) {
            power.saidOff();
        }
        conditions(pollResult);
        listener.swept(pollResult);
    }

    /** An adapter that went is no end of the run, unless it was the supply's: what nobody can switch off must go off. */
    private void ports(PollResult pollResult) {
        long now = scheduler.nowNanos();
        String name = pollResult.instrument();
        replugged.gone(pollResult, now).ifPresent(words -> {
            said(EventKind.LINE, words);
            if (!name.equals(setup.bench().supply().name())) {
                lost(name, now);
            } else if (mayBeOn() && part != Part.SWITCHING_OFF) {
                stop(name, name + ": its port has gone, so it can no longer be watched");
            }
        });
        replugged.back(pollResult, now).ifPresent(words -> {
            said(EventKind.LINE, words);
            if (part == Part.STEPPING) {
                steps.repeat(words);
            }
        });
    }

    /**
     * Nobody may be watching, and no limit is left without a witness: the output goes off at once. What nothing depends on
     * may come back first.
     */
    private void lost(String name, long sinceNanos) {
        if (setup.reliesOn(name)) {
            pauseWithout(name);
        } else {
            later(name, sinceNanos, AWAY_UNDER_POWER, () -> pauseWithout(name));
        }
        later(name, sinceNanos, AWAY_AT_MOST, () -> endWithout(name));
    }

    private void later(String name, long sinceNanos, Duration after, Runnable unlessBack) {
        scheduler.at(sinceNanos + after.toNanos(), () -> {
            if (replugged.since(name).equals(OptionalLong.of(sinceNanos))) {
                unlessBack.run();
            }
        });
    }

    private void pauseWithout(String name) {
        if (part == Part.POWERING || part == Part.STEPPING && !windings.busy()) {
            String words = name + " is away: put it back";
            pause(words, words);
        }
    }

    private void endWithout(String name) {
        if (part == Part.LISTENING) {
            stop("interlock", "no power: " + name + " was not put back");
        } else if (part == Part.PAUSED) {
            String words = name + " was not put back within " + AWAY_AT_MOST.toMinutes()
                    + " min; it is looked for no longer. What was measured is kept";
            said(EventKind.STOP, words);
            switchOff(SessionState.STOPPED, words);
        }
    }

    private boolean isOffSaid(PollResult pollResult) {
        return pollResult.instrument().equals(setup.bench().supply().name())
                && pollResult.conditions().contains(Condition.OUTPUT_OFF);
    }

    private void conditions(PollResult pollResult) {
        if (part == Part.SWITCHING_OFF || part == Part.OVER) {
            return;
        }
        if (!windings.busy() && !steps.powering()) {
            steps.limits(pollResult);
        }
        if (pollResult.conditions().contains(Condition.PROTECTION)) {
            stop(pollResult.instrument(), pollResult.instrument() + " switched itself off: its protection tripped");
        }
        if (windings.busy() || part == Part.PAUSED) {
            return; // a supply that holds its current is what is wanted there
        }
        if (pollResult.instrument().equals(setup.bench().supply().name())) {
            path.state(pollResult.conditions());
        }
        if (part == Part.STEPPING) {
            steps.conditions(pollResult);
        }
        settings(pollResult);
    }

    /** What was set must stay set, a current limit too, which no reading shows while it is not reached. */
    private void settings(PollResult pollResult) {
        String supply = setup.bench().supply().name();
        if (pollResult.instrument().equals(supply) && (part == Part.POWERING || part == Part.STEPPING)) {
            setup.bench()
                    .supply()
                    .instrument()
                    .settingChanged()
                    .ifPresent(words -> stop(supply, supply + ": " + words));
        }
    }

    private void unanswered(LineException why) {
        said(EventKind.LINE, String.valueOf(why.getMessage()));
    }

    private void judge(Event event) {
        interlock = interlock.next(event);
        Optional<Trip> trip = interlock.trip();
        if (trip.isPresent() && part != Part.SWITCHING_OFF && part != Part.OVER) {
            tripped(trip.get());
        }
    }

    private void tripped(Trip trip) {
        boolean person = trip.kind() == Trip.Kind.PERSON;
        happened(SessionEvent.Tripped.of(trip));
        switchOff(person ? SessionState.STOPPED : SessionState.TRIPPED, trip.words());
    }

    private void enter(Phase phase) {
        judge(new Event.Enter(phase, scheduler.nowNanos()));
    }

    private void poweredUp(Result result) {
        if (part != Part.POWERING || result instanceof Result.Stopped) {
            return; // where off came between, whoever sent it ends the run
        }
        if (!result.isDone()) {
            happened(path.ended(result));
            stop("first power", result.words());
            return;
        }
        part = Part.STEPPING;
        steps.next();
    }

    /** The steps that want the unit off come while first power waits at working voltage. */
    private void standbySteps(Consumer<Result> way) {
        if (part == Part.POWERING) {
            part = Part.STEPPING;
            steps.standby(way);
        }
    }

    /** While set points move, values worked out from several readings would mix before and after. */
    private void moving(boolean now) {
        changing = now;
        judge(new Event.Changed(scheduler.nowNanos()));
    }

    private void switchOff(SessionState state, String reason) {
        part = Part.SWITCHING_OFF;
        ending = state;
        person.forget();
        looks.forget();
        if (state == SessionState.COMPLETE) {
            power.offAtTheEnd(reason, this::over);
        } else {
            power.off(reason, this::over);
        }
        steps.giveUp(reason);
        windings.giveUp();
    }

    private void over(Ended ended) {
        if (part == Part.OVER) {
            return;
        }
        part = Part.OVER;
        person.forget();
        polling.stop();
        power.release();
        happened(new SessionEvent.SwitchedOff(ended.confirmed(), ended.railsSafe(), ended.words()));
        guard.over(ended.confirmed());
        recorder.finish(ending);
        then.accept(new RunEnd(ending, ended.confirmed(), ended.words()));
    }

    /**
     * A mistake in the program ended the scheduler's turn. The bytes of off leave first; where the scheduler can go on, so does
     * the switching off in its order.
     *
     * @return false when there were so many that nothing here is to be trusted any more
     */
    boolean mistaken(Throwable mistake) {
        power.cutOff();
        if (++mistakes > MOST_MISTAKES || part == Part.OVER) {
            return false;
        }
        ending = SessionState.TRIPPED;
        if (nextTick != null) {
            nextTick.cancel();
        }
        scheduler.post(() -> {
            happened(mistakeTrip(mistake));
            if (part != Part.SWITCHING_OFF) {
                switchOff(SessionState.TRIPPED, words(mistake));
            }
            tick();
        });
        return true;
    }

    private static SessionEvent mistakeTrip(Throwable mistake) {
        return new SessionEvent.Tripped(Trip.Kind.STOPPED, "program", Optional.empty(), words(mistake));
    }

    private static String words(Throwable mistake) {
        return "a mistake in the program ended the run: " + Mistake.words(mistake);
    }

    /**
     * Nothing of the run is to be trusted any more: the bytes of off every second until the supply itself says that it is
     * off, and the guardian, which switches the loads off in their order.
     */
    void brokenOff(Throwable mistake) {
        part = Part.OVER;
        polling.stop();
        boolean off = power.lastWord(LAST_ANSWER);
        happened(mistakeTrip(mistake));
        if (!off) {
            alarm(scheduler.nowNanos(), "the supply did not say off; it may be on, and it " + Power.OPEN);
            off = guard.needed() && offAtLast();
        }
        happened(new SessionEvent.SwitchedOff(
                off,
                false,
                off ? "output off; the rails were not watched: take them as live" : "the supply " + Power.OPEN));
        guard.over(false);
        recorder.finish(SessionState.TRIPPED);
    }

    /** Asked every second; false when a person says instead that the disconnect is open. */
    private boolean offAtLast() {
        boolean[] open = {false};
        person.forget();
        person.disconnect(DISCONNECT, () -> open[0] = true);
        while (!open[0]) {
            boolean[] due = {false};
            scheduler.after(Duration.ofSeconds(1), () -> due[0] = true);
            try {
                scheduler.runUntil(() -> due[0] || open[0]);
            } catch (RuntimeException | Error another) {
                Thread.interrupted();
            }
            if (power.lastWord(LAST_ANSWER)) {
                return true;
            }
        }
        return false;
    }

    private void said(EventKind kind, String words) {
        happened(new SessionEvent.Said(kind, words));
    }

    private void happened(SessionEvent event) {
        told(scheduler.nowNanos(), event);
    }

    private void told(long nanos, SessionEvent event) {
        recorder.add(new EventEntry(nanos, event));
        listener.happened(nanos / 1e9, event);
    }

    @Override
    public void step(long atNanos, String what, String words) {
        told(atNanos, new SessionEvent.PowerStep(what, words));
    }

    @Override
    public void alarm(long atNanos, String words) {
        told(atNanos, new SessionEvent.Said(EventKind.ALARM, words));
        if (part == Part.STEPPING) {
            stop(setup.bench().supply().name(), words); // an off that is none
        }
        if ((part == Part.SWITCHING_OFF || part == Part.PAUSED) && !setup.isByHand()) {
            person.forget();
            person.disconnect(DISCONNECT, power::disconnectOpen);
        }
    }

    @Override
    public void alarmOver(long atNanos, String words) {
        if (!setup.isByHand()) {
            person.forget();
        }
        told(atNanos, new SessionEvent.Said(EventKind.ALARM_OVER, words));
    }

    /** The run as its steps know it. */
    private final class OwnCourse implements PlanSteps.Course {
        @Override
        public boolean stepping() {
            return part == Part.STEPPING;
        }

        @Override
        public void rest(Consumer<Result> then) {
            enter(Phase.INRUSH); // the rails fall
            power.off("an off period of the cycle", ended -> {
                if (part != Part.STEPPING) {
                    return;
                }
                if (ended.confirmed()) {
                    enter(Phase.OFF);
                    then.accept(new Result.Done(ended.words()));
                } else {
                    Run.this.stop(setup.bench().supply().name(), ended.words());
                }
            });
        }

        @Override
        public void turningOn() {
            part = Part.POWERING;
        }

        @Override
        public void stop(String by, String words) {
            Run.this.stop(by, words);
        }

        @Override
        public void happened(SessionEvent event) {
            Run.this.happened(event);
        }

        @Override
        public void typed(Measured value) {
            if (setup.isByHand()) {
                judgeTyped(value);
            }
        }

        @Override
        public void done() {
            if (setup.plan().cooling().isPresent() && !cooled) {
                cooled = true;
                enter(Phase.INRUSH); // the rails fall, and current goes through a winding
                power.off("the winding cools from now on", ended -> {
                    if (part == Part.STEPPING) {
                        windings.begin(setup.plan().cooling().get(), this::done);
                    }
                });
                return;
            }
            said(EventKind.END, "the plan is done");
            switchOff(SessionState.COMPLETE, "the plan is done");
        }
    }
}
