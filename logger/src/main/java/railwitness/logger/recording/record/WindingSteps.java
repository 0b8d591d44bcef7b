package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.DoubleSummaryStatistics;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Consumer;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Scheduler;
import railwitness.drivers.winding.Hookup;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.TransformerTest;
import railwitness.logger.recording.points.WindingChannels;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.TimeSpan;
import railwitness.safety.interlock.Phase;
import railwitness.safety.power.Power;
import railwitness.safety.power.Result;

/**
 * The connections of a transformer test, one after the other: the person connects with the output off, the supply's
 * current comes on where it is wanted, the average is taken, the output goes off again. Each becomes a step of the session.
 * Whatever ends the run ends this too.
 */
final class WindingSteps {
    private static final Duration STANDS = Duration.ofSeconds(2);
    private static final int SETTLE_PARTS = 15;
    private static final int LEAST_READINGS = 3;
    private static final int MOST_TRIES = 3;
    private static final double LEAST_SHARE = 0.1;

    /** Between two readings of a winding that cools. */
    private static final Duration BETWEEN = Duration.ofSeconds(15);

    private enum Part {
        IDLE,
        ASKING,
        STANDING,
        AVERAGING,
        ENDING
    }

    private final RunSetup setup;
    private final Scheduler scheduler;
    private final Power power;
    private final Person person;
    private final Recorder recorder;
    private final RunListener listener;
    private final PlanSteps.Course course;
    private final Consumer<Phase> phases;
    private final WindingChannels channels;
    private final Deque<Hookup> toDo = new ArrayDeque<>();
    private final Map<Channel, DoubleSummaryStatistics> heard = new HashMap<>();
    private final WindingSense sense;
    private TransformerTest test;
    private WindingPrompts prompts;
    private Runnable then = () -> {};
    private Part part = Part.IDLE;
    private Hookup current;
    private int tries;
    private boolean answered;
    private double forwardVolts;
    private long sinceNanos;
    private long offNanos;

    WindingSteps(
            RunSetup setup,
            Power power,
            Person person,
            Recorder recorder,
            RunListener listener,
            PlanSteps.Course course,
            Consumer<Phase> phases) {
        this.phases = phases;
        this.setup = setup;
        this.scheduler = setup.scheduler();
        this.power = power;
        this.person = person;
        this.recorder = recorder;
        this.listener = listener;
        this.course = course;
        this.channels = new WindingChannels(setup.bench().sheet());
        this.sense = new WindingSense(setup.wound());
    }

    /** True from the first question to the last reading: meanwhile the unit is not at the bench. */
    boolean busy() {
        return part != Part.IDLE;
    }

    /**
     * Begins.
     *
     * @param over told when all connections are read
     */
    void begin(TransformerTest wanted, Runnable over) {
        test = wanted;
        then = over;
        prompts = new WindingPrompts(wanted, channels, hertz());
        part = Part.ASKING;
        offNanos = scheduler.nowNanos();
        toDo.addAll(wanted.hookups());
        if (wanted.cooling()) {
            next();
            return;
        }
        course.happened(new SessionEvent.Said(EventKind.INSULATION, WindingPrompts.INSULATION));
        wanted.needs().forEach(words -> course.happened(new SessionEvent.Said(EventKind.LEFT_OUT, words)));
        temperature();
    }

    private double hertz() {
        return test.driveHz().orElse(setup.design().converter().frequencyHz().orElse(25_000));
    }

    private void temperature() {
        if (channels.wired(channels.temperature())) {
            next();
            return;
        }
        ask(channels.temperature(), prompts.temperature(), value -> next());
    }

    /** Asks for a number; what is answered is kept as a reading. */
    private void ask(Channel channel, String sentence, Consumer<OptionalDouble> done) {
        Consumer<OptionalDouble> kept = value -> {
            if (part != Part.IDLE && course.stepping()) {
                value.ifPresent(number -> keep(channel, number));
                done.accept(value);
            }
        };
        channels.byHand(channel)
                .ifPresentOrElse(meter -> person.read(meter, kept), () -> person.readThere(channel, sentence, kept));
    }

    private void keep(Channel channel, double number) {
        long now = scheduler.nowNanos();
        Measured value = new Measured(channel, number, now, now);
        recorder.reading(value);
        listener.heard(value);
        heard(value);
    }

    private void next() {
        current = toDo.poll();
        if (current == null) {
            part = Part.IDLE;
            then.run();
            return;
        }
        tries = 0;
        connect(prompts.sentence(current));
    }

    private void connect(String sentence) {
        Hookup mine = current;
        part = Part.ASKING;
        if (mine.kind() == Hookup.Kind.COOLING && mine.count() > 1) {
            scheduler.after(BETWEEN, () -> ifStill(mine, () -> connected(mine)));
            return;
        }
        Channel meter = mine.direct() ? channels.volts() : channels.alternating();
        person.connect(mine, meter.node(), sentence, () -> ifStill(mine, () -> connected(mine)));
    }

    private void ifStill(Hookup mine, Runnable go) {
        if (current == mine && part != Part.IDLE && course.stepping()) {
            go.run();
        }
    }

    private void connected(Hookup mine) {
        if (!mine.direct()) {
            stand();
            return;
        }
        phases.accept(Phase.FIRST_POWER);
        power.arm(
                setup.windingArming(test.testAmps()),
                armed -> powered(mine, armed, () -> power.on(on -> powered(mine, on, this::stand))));
    }

    private void powered(Hookup mine, Result result, Runnable go) {
        ifStill(mine, () -> {
            if (result.isDone()) {
                go.run();
            } else if (result instanceof Result.Refused) {
                course.stop("instrument", result.words());
            }
        });
    }

    private void stand() {
        part = Part.STANDING;
        sinceNanos = scheduler.nowNanos();
    }

    void heard(Reading reading) {
        if (part == Part.AVERAGING && reading instanceof Measured measured && measured.requestedNanos() >= sinceNanos) {
            heard.computeIfAbsent(measured.channel(), channel -> new DoubleSummaryStatistics())
                    .accept(measured.value());
        }
    }

    void tick() {
        long now = scheduler.nowNanos();
        if (part == Part.STANDING && now - sinceNanos >= stands()) {
            average(now);
        } else if (part == Part.AVERAGING) {
            look(now);
        }
    }

    /** Current and voltage of a winding stand at once; a supply takes its time. */
    private long stands() {
        return Math.min(
                STANDS.toNanos(),
                test.timing().settleAtMost().dividedBy(SETTLE_PARTS).toNanos());
    }

    private void average(long now) {
        part = Part.AVERAGING;
        sinceNanos = now;
        heard.clear();
        Hookup mine = current;
        Channel channel = channel(mine);
        answered = channels.wired(channel);
        if (!answered) {
            ask(channel, prompts.reading(mine), value -> ifStill(mine, () -> answered = true));
        }
    }

    private Channel channel(Hookup hookup) {
        if (hookup.kind() == Hookup.Kind.RINGING) {
            return channels.frequency();
        }
        return hookup.direct() ? channels.volts() : channels.alternating();
    }

    private void look(long now) {
        boolean enough = answered
                && now - sinceNanos >= test.timing().average().toNanos()
                && enough(channel(current))
                && (!current.direct() || enough(channels.amps()));
        boolean tooLong = answered
                && now - sinceNanos
                        >= test.timing()
                                .settleAtMost()
                                .plus(test.timing().average())
                                .toNanos();
        if (enough || tooLong) {
            end(now, enough);
        }
    }

    private boolean enough(Channel channel) {
        return !channels.wired(channel)
                || Optional.ofNullable(heard.get(channel))
                                .map(DoubleSummaryStatistics::getCount)
                                .orElse(0L)
                        >= LEAST_READINGS;
    }

    private void end(long now, boolean enough) {
        part = Part.ENDING;
        Hookup mine = current;
        TimeSpan span = new TimeSpan(sinceNanos, now + 1);
        Runnable judge = () -> ifStill(mine, () -> judge(span, enough));
        if (mine.direct()) {
            power.off("the winding's voltage was read", ended -> {
                if (ended.confirmed()) {
                    phases.accept(Phase.OFF);
                    judge.run();
                } else {
                    ifStill(mine, () -> course.stop("instrument", ended.words()));
                }
            });
        } else {
            judge.run();
        }
    }

    private void judge(TimeSpan span, boolean enough) {
        if (!enough || !heard.containsKey(channel(current))) {
            over(Optional.empty(), "no reading");
            return;
        }
        Optional<String> doubt = current.direct() ? doubt() : Optional.empty();
        if (doubt.isEmpty()) {
            if (current.kind() == Hookup.Kind.ONE_WAY) {
                forwardVolts = mean(channels.volts());
            }
            sense.heard(current, mean(channel(current)), mean(channels.amps()));
            over(Optional.of(span), "");
        } else if (++tries < MOST_TRIES && current.kind() != Hookup.Kind.COOLING) {
            course.happened(new SessionEvent.Said(EventKind.ONCE_MORE, current.name() + ": " + doubt.get()));
            connect(doubt.get() + ". " + prompts.sentence(current));
        } else {
            over(Optional.empty(), doubt.get());
        }
    }

    private double mean(Channel channel) {
        return Optional.ofNullable(heard.get(channel))
                .map(DoubleSummaryStatistics::getAverage)
                .orElse(0.0);
    }

    /** What cannot be of a winding that is connected as asked. */
    private Optional<String> doubt() {
        double amps = mean(channels.amps());
        double volts = mean(channels.volts());
        if (Math.abs(amps)
                < LEAST_SHARE
                        * Math.min(
                                test.testAmps(),
                                setup.windingArming(test.testAmps()).limitAmps())) {
            return Optional.of(
                    "Hardly any current flows: scrape the enamel off under the clips, or the winding is open");
        }
        if (current.kind() == Hookup.Kind.OTHER_WAY && volts * forwardVolts > 0) {
            return Optional.of("The voltage has kept its sign, so the supply's leads are not exchanged");
        }
        return Optional.empty();
    }

    private void over(Optional<TimeSpan> average, String reason) {
        StepEntry entry = new StepEntry(
                TransformerTest.WORD,
                current.name(),
                test.cooling() ? offNanos : sinceNanos,
                average,
                true,
                average.isPresent() ? StepOutcome.MEASURED : StepOutcome.NOT_REACHED,
                reason,
                OptionalDouble.empty(),
                new TreeMap<>());
        recorder.add(entry);
        course.happened(
                average.isPresent()
                        ? new SessionEvent.Said(EventKind.READ, current.name())
                        : new SessionEvent.NotReached(entry.stage(), entry.step(), reason));
        next();
    }

    /** Why this transformer is not to be powered; empty where nothing speaks against it. */
    Optional<String> against() {
        return sense.against();
    }

    /** Nothing more is asked. */
    void giveUp() {
        part = Part.IDLE;
        toDo.clear();
    }
}
