package railwitness.safety.power;

import java.time.Duration;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Consumer;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Scheduler;
import railwitness.safety.interlock.Phase;

/**
 * The first power of a run, from an armed supply to rails that are up: the input is raised in steps with the remote
 * turn-on off, then the unit is turned on at its working voltage and given a bounded time to fill its capacitors. Up is:
 * every rail that is read is where it should be and stands still, and the supply does not limit. What the design does
 * not give (the idle current, rails that stand elsewhere than at their nominal) the person is asked in one sentence. It
 * ends at once, output off, when the current leaves what the design allows, when a sign is wrong, or when the supply's
 * output goes off by itself. One use each.
 */
public final class FirstPower {
    /** How it ended. */
    public sealed interface Outcome {
        /** The rails are up and the unit draws no more than its no-load current. */
        record Up(double amps) implements Outcome {}

        /**
         * The output was switched off.
         *
         * @param stage remote off or remote on
         * @param amps last input current, where one was read
         * @param volts input voltage that was set
         * @param why what was seen and what it points to
         */
        record Ended(String stage, OptionalDouble amps, double volts, FirstPowerEnd why) implements Outcome {
            public String words() {
                return why.words();
            }
        }

        /** Somebody else switched the output off meanwhile. */
        record Stopped() implements Outcome {}
    }

    /** Switches the unit's remote turn-on on: by the supply, or by asking the person. */
    @FunctionalInterface
    public interface RemoteTurnOn {
        void on(Consumer<Result> then);
    }

    /** Asks the person whether what is read is right; {@code yes} when they say so, else they switch off. */
    @FunctionalInterface
    public interface Asking {
        void ask(String sentence, Runnable yes);
    }

    private enum Part {
        WAITING,
        STEPS,
        INRUSH,
        RISING,
        ASKING,
        ENDED
    }

    private static final double OVER_LIMIT = 1.1;
    private static final double LIMIT_SHARE = 0.9;
    private static final Duration UNREAD = Duration.ofSeconds(3);
    private static final Duration SLOWEST_RISE = Duration.ofSeconds(5);
    /** Meters that read once in two or three seconds still get their window. */
    private static final Duration SLOWEST_METERS = Duration.ofSeconds(15);

    /** A person reads as long as they need; how long is waited for them is the run's business. */
    private static final Duration SLOWEST_SIGHT = Duration.ofMinutes(30);

    private static final Duration SECOND_LOOK = Duration.ofSeconds(1);

    private final Scheduler scheduler;
    private final Power power;
    private final FirstPowerBounds bounds;
    private final FirstPowerReadings readings;
    private final RemoteTurnOn remote;
    private final Asking asking;
    private final Consumer<Phase> phases;
    private final RailsRising rails;
    private final SupplyHolds supply;

    private Consumer<Outcome> then = outcome -> {};
    private Part part = Part.WAITING;
    private int step;
    private double volts;
    private long judgedFrom;
    private long reversedSince = Long.MAX_VALUE;
    private boolean confirmed;
    private OptionalDouble amps = OptionalDouble.empty();

    /**
     * @param readings what is judged; every reading of the run goes to {@link #heard}, every state to {@link #state}
     * @param phases is told each phase as it begins, for the interlock
     */
    public FirstPower(
            Scheduler scheduler,
            Power power,
            FirstPowerBounds bounds,
            FirstPowerReadings readings,
            RemoteTurnOn remote,
            Asking asking,
            Consumer<Phase> phases) {
        this.scheduler = scheduler;
        this.power = power;
        this.bounds = bounds;
        this.readings = readings;
        this.remote = remote;
        this.asking = asking;
        this.phases = phases;
        this.rails = new RailsRising(readings.rails(), readings.bySight());
        this.supply = new SupplyHolds(readings.supplyVolts(), readings.supplyAmps());
    }

    /** Switches on; the power must be armed. {@code then} is called once. */
    public void begin(Consumer<Outcome> whenOver) {
        if (part != Part.WAITING || power.state() != PowerState.ARMED) {
            throw new IllegalStateException("first power begins once, with the supply armed, not: "
                    + power.state().words());
        }
        then = whenOver;
        phases.accept(Phase.FIRST_POWER);
        double first = bounds.stepVolts().isEmpty()
                ? bounds.workingVolts()
                : bounds.stepVolts().get(0);
        double limit = bounds.stepVolts().isEmpty() ? bounds.inrushLimitAmps() : bounds.remoteOffLimitAmps();
        goingOn()
                .then(set -> power.setVolts(first, set))
                .then(set -> power.setCurrentLimit(limit, set))
                .then(power::on)
                .run(done(this::isOn));
    }

    private void isOn() {
        if (bounds.stepVolts().isEmpty()) {
            volts = bounds.workingVolts();
            startInrush();
        } else {
            part = Part.STEPS;
            stepTaken();
        }
    }

    private void stepTaken() {
        double next = bounds.stepVolts().get(step);
        judgeAfter(bounds.inputWindow(next - volts));
        volts = next;
        supply.isSet(volts, bounds.remoteOffLimitAmps(), judgedFrom);
    }

    /** From when on a look at the meters is wanted, ns; empty while none is. */
    public OptionalLong wantsLookFrom() {
        boolean looks = part == Part.STEPS || part == Part.INRUSH || part == Part.RISING;
        return looks && judgedFrom != Long.MAX_VALUE ? OptionalLong.of(judgedFrom) : OptionalLong.empty();
    }

    /** Every reading, once the interlock has judged it. */
    public void heard(Reading reading) {
        if (part == Part.WAITING || part == Part.ENDED) {
            return;
        }
        if (power.state() != PowerState.ON) {
            report(new Outcome.Stopped());
            return;
        }
        if (reading instanceof Measured measured) {
            measured(measured);
        }
        if (part != Part.ENDED && reading.channel().equals(readings.inputAmps()) && !(reading instanceof Missing)) {
            judge(reading);
        }
    }

    /** What state the supply said it is in, after the readings of the same round. */
    public void state(Set<Condition> conditions) {
        supply.state(conditions, scheduler.nowNanos());
        if (part != Part.WAITING && part != Part.ENDED && conditions.contains(Condition.OUTPUT_OFF)) {
            end("the supply says that its output is off, and nobody ordered that: it has switched off or reset itself");
        }
    }

    private void measured(Measured reading) {
        supply.heard(reading);
        if (rails.watches(reading.channel())) {
            rails.heard(reading);
        }
        boolean terminals =
                readings.inputVolts().filter(reading.channel()::equals).isPresent();
        if (terminals && reading.value() < -Math.max(1, volts / 10)) {
            end("the input meter reads " + number(reading.value(), "V")
                    + ": its leads are reversed, or the unit is fed the wrong way round");
        } else if (reading.channel().equals(readings.inputAmps()) && reading.value() < -readings.negativeAmps()) {
            end("the input current reads " + number(reading.value(), "A") + ": " + readings.currentLeads()
                    + " are reversed");
        } else {
            supply.lost().ifPresentOrElse(this::end, this::lookForSigns);
        }
    }

    private void lookForSigns() {
        long now = scheduler.nowNanos();
        rails.reversed(now - reversedSince >= SECOND_LOOK.toNanos()).ifPresent(this::end);
        if (part != Part.ENDED && rails.reversed(true).isPresent()) {
            reversedSince = Math.min(reversedSince, now);
        }
    }

    private void judge(Reading reading) {
        double value = reading instanceof Measured measured ? measured.value() : Double.POSITIVE_INFINITY;
        amps = OptionalDouble.of(value);
        boolean settled = reading.requestedNanos() >= judgedFrom;
        double ceiling = part == Part.STEPS ? bounds.remoteOffLimitAmps() : bounds.inrushLimitAmps();
        double bound = part == Part.STEPS ? bounds.remoteOffAmps() : bounds.noLoadAmps();
        if (value > (settled ? bound : OVER_LIMIT * ceiling)) {
            tooMuch(bound);
        } else if (settled && part == Part.STEPS) {
            nextStep();
        } else if (settled && part == Part.INRUSH) {
            part = Part.RISING;
            phases.accept(Phase.WORKING);
            lookForRails();
        } else if (settled && part == Part.RISING) {
            lookForRails();
        }
    }

    private void tooMuch(double bound) {
        double drawn = amps.orElse(0);
        end(
                part == Part.STEPS
                        ? new FirstPowerEnd.TooMuchOff(
                                drawn,
                                volts,
                                bound,
                                bounds.standbyKnown(),
                                drawn >= LIMIT_SHARE * bounds.remoteOffLimitAmps())
                        : new FirstPowerEnd.TooMuchOn(
                                drawn,
                                volts,
                                bounds.inrushWindow().toMillis() / 1e3,
                                bound,
                                bounds.noLoadKnown(),
                                !bounds.stepVolts().isEmpty(),
                                rails.seen(),
                                rails.stand()));
    }

    private void nextStep() {
        step++;
        judgedFrom = Long.MAX_VALUE;
        supply.moves();
        if (step < bounds.stepVolts().size()) {
            power.setVolts(bounds.stepVolts().get(step), done(this::stepTaken));
        } else {
            goingOn()
                    .then(set -> power.setVolts(bounds.workingVolts(), set))
                    .now(() -> volts = bounds.workingVolts())
                    .then(set -> power.setCurrentLimit(bounds.inrushLimitAmps(), set))
                    .run(done(this::startInrush));
        }
    }

    private Chain goingOn() {
        return Chain.whileWanted(() -> part != Part.ENDED);
    }

    private void startInrush() {
        part = Part.INRUSH;
        judgedFrom = Long.MAX_VALUE;
        phases.accept(Phase.INRUSH);
        supply.isSet(volts, bounds.inrushLimitAmps(), scheduler.nowNanos());
        remote.on(done(() -> judgeAfter(bounds.inrushWindow())));
    }

    private void lookForRails() {
        boolean still = rails.steady(judgedFrom) && !supply.limits();
        boolean sure = rails.stand() && bounds.noLoadKnown() && !rails.none();
        if (still && (sure || confirmed && rails.mayBeRight())) {
            phases.accept(Phase.UP);
            report(new Outcome.Up(amps.orElse(0)));
        } else if (still && rails.mayBeRight() && rails.exchanged().isEmpty()) {
            part = Part.ASKING;
            asking.ask(question(), this::saidYes);
        } else if (readings.bySight()
                ? rails.readEnough(judgedFrom)
                : scheduler.nowNanos() - judgedFrom
                        > (rails.readEnough(judgedFrom) ? SLOWEST_RISE : SLOWEST_METERS).toNanos()) {
            end(notUp());
        }
    }

    private void saidYes() {
        if (part == Part.ASKING) {
            confirmed = true;
            part = Part.RISING;
            if (readings.bySight()) {
                lookForRails();
            } else {
                judgeAfter(Duration.ZERO);
            }
        }
    }

    private String question() {
        String rail = rails.none()
                ? "no meter reads the rails here: measure them. "
                : "the rails read " + rails.words()
                        + (rails.stand() ? "" : " (" + FirstPowerEnd.lowWords(rails.low(judgedFrom)) + ")")
                        + " and stand still. ";
        return "At " + number(volts, "V") + " the unit draws " + drawn() + " without load"
                + (bounds.noLoadKnown() ? "" : "; the design sheet does not say how much that may be") + "; " + rail
                + "If that is wrong, switch off; if it is right, say so";
    }

    private FirstPowerEnd notUp() {
        return rails.exchanged()
                .<FirstPowerEnd>map(FirstPowerEnd.Exchanged::new)
                .orElseGet(() ->
                        new FirstPowerEnd.NotUp(rails.low(judgedFrom), supply.limits(), rails.steady(judgedFrom)));
    }

    /** Readings asked for after this time are judged by the narrow bound; without one, the wait is bounded too. */
    private void judgeAfter(Duration window) {
        judgedFrom = scheduler.nowNanos() + window.toNanos();
        long mine = judgedFrom;
        Duration slowest = readings.bySight() ? SLOWEST_SIGHT : part == Part.STEPS ? SLOWEST_RISE : SLOWEST_METERS;
        scheduler.at(mine + UNREAD.toNanos() + slowest.toNanos(), () -> {
            if (mine == judgedFrom && part != Part.ENDED && part != Part.ASKING) {
                end("first power did not go on: no reading of the input current brought it further");
            }
        });
    }

    private Consumer<Result> done(Runnable next) {
        return result -> {
            if (part == Part.ENDED) {
                return;
            }
            if (result instanceof Result.Stopped) {
                report(new Outcome.Stopped());
            } else if (result instanceof Result.Refused) {
                end(result.words());
            } else {
                next.run();
            }
        };
    }

    private String drawn() {
        return Double.isInfinite(amps.orElse(0)) ? "more than the meter's range" : number(amps.orElse(0), "A");
    }

    private void end(String said) {
        end(new FirstPowerEnd.Said(said));
    }

    private void end(FirstPowerEnd why) {
        String stage = part == Part.STEPS ? "remote off" : "remote on";
        power.off("first power: " + why.words(), ended -> {});
        report(new Outcome.Ended(stage, amps, volts, why));
    }

    private void report(Outcome outcome) {
        part = Part.ENDED;
        then.accept(outcome);
    }

    private static String number(double value, String unit) {
        return String.format(Locale.ROOT, "%.3g %s", value, unit);
    }
}
