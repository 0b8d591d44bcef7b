package railwitness.logger.record;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.Sweep;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Agenda;
import railwitness.logger.store.EventEntry;
import railwitness.logger.store.Recorder;
import railwitness.logger.store.SessionState;
import railwitness.logger.store.StoreException;
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
    private static final Duration OFTEN = Duration.ofMillis(500);
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
    private final Guard guard;
    private final Power power;
    private final PowerPath path;
    private final Polling polling;
    private final PlanSteps steps;
    private Part part = Part.LISTENING;
    private volatile Interlock interlock;
    private boolean changing;
    private volatile long awakeNanos;
    private long wallDueNanos;
    private Consumer<RunEnd> then;

    public Run(RunSetup setup, Recorder recorder, Person person, RunListener listener, Guard guard) {
        this.setup = setup;
        this.agenda = setup.agenda();
        this.recorder = recorder;
        this.listener = listener;
        this.guard = guard;
        this.interlock = Interlock.of(setup.watches(), setup.patience(), agenda.nowNanos());
        this.power = new Power(agenda, setup.bench().supply(), setup.loads(), setup.rails(), this::permitted, this);
        this.path = new PowerPath(setup, power, person, this::enter, this::happened);
        StepSetter setter = new StepSetter(setup, power, person, this::moving);
        this.steps = new PlanSteps(setup, recorder, person, listener, path, setter, new OwnCourse());
        this.polling = new Polling(agenda, this::interval, this::awake, this::swept, this::unanswered);
    }

    /** Asked from the instruments' threads too. */
    /** A burn-in may ask slowly; power that comes and goes is looked at often. */
    private Duration interval() {
        Duration wanted = setup.interval();
        boolean often = part != Part.STEPPING && wanted.compareTo(OFTEN) > 0;
        return often ? OFTEN : wanted;
    }

    private boolean permitted() {
        boolean awake = agenda.nowNanos() - awakeNanos <= setup.patience().toNanos();
        return awake && interlock.permitted() && guard.guarding();
    }

    /** Begins; {@code then} is told once, on the agenda, when everything is off and the session is closed. */
    public void start(Consumer<RunEnd> whenOver) {
        then = whenOver;
        happened("begin", "listening to the instruments before power");
        guard.lacking().ifPresent(words -> happened("no guardian", words));
        setup.bench().stations().forEach(station -> station.instrument()
                .lacks()
                .forEach(words -> happened("left out", station.name() + ": " + words)));
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
        if (part == Part.STEPPING) {
            steps.tick();
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
            steps.heard(reading);
        }
        conditions(sweep);
        listener.swept(sweep);
    }

    private void conditions(Sweep sweep) {
        if (part == Part.SWITCHING_OFF || part == Part.OVER) {
            return;
        }
        steps.limits(sweep);
        if (sweep.conditions().contains(Condition.PROTECTION)) {
            stop(sweep.instrument(), sweep.instrument() + " switched itself off: its protection tripped");
        }
        if (sweep.instrument().equals(setup.bench().supply().name())) {
            path.state(sweep.conditions());
        }
        if (part == Part.STEPPING) {
            steps.conditions(sweep);
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
        judge(new Event.Changed(agenda.nowNanos()));
    }

    private void switchOff(SessionState state, String reason) {
        part = Part.SWITCHING_OFF;
        power.off(reason, ended -> over(state, ended.confirmed(), ended.words()));
        steps.giveUp(reason);
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

    /** The run as its steps know it. */
    private final class OwnCourse implements PlanSteps.Course {
        @Override
        public boolean stepping() {
            return part == Part.STEPPING;
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
        public void happened(String what, String text) {
            Run.this.happened(what, text);
        }

        @Override
        public void done() {
            Run.this.happened("end", "the plan is done");
            switchOff(SessionState.COMPLETE, "the plan is done");
        }
    }
}
