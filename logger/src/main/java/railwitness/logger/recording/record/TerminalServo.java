package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.time.Scheduler;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.safety.power.Result;

/**
 * Holds the unit's own terminals at a step's input where the plan wants it: raises the supply a little at a time, only
 * upwards and never beyond what the plan allows for leads and fuse. Each move waits for a reading that was asked for after
 * the last one, so that it cannot run ahead of what it sees. Where it cannot reach the input it says so, and the step is
 * measured as it stands: figures are moved by the slope as in any other session.
 */
final class TerminalServo {
    private static final Channel TERMINALS = new Channel("input", Quantity.VOLTAGE);

    /** Time for supply, unit and meter to stand after a move. */
    private static final Duration STANDS = Duration.ofMillis(700);

    private static final Duration LOOK = Duration.ofMillis(100);
    private static final Duration LONGEST = Duration.ofSeconds(40);

    /** Largest single move, V. */
    private static final double LARGEST_MOVE = 0.15;

    /** Share of what is missing that one move makes good: less than all of it, so that it never goes too far. */
    private static final double SHARE = 0.8;

    /** Near enough, relative: a tenth of what figures are moved without a slope. */
    private static final double NEAR = 5e-4;

    private final RunSetup setup;
    private final Scheduler scheduler;
    private final PowerPath path;
    private final StepSetter setter;
    private final Consumer<SessionEvent> happened;
    private final BooleanSupplier limiting;

    /** @param limiting whether the supply limits its current, or a load cannot hold: nothing is raised then */
    TerminalServo(
            RunSetup setup,
            PowerPath path,
            StepSetter setter,
            Consumer<SessionEvent> happened,
            BooleanSupplier limiting) {
        this.setup = setup;
        this.scheduler = setup.scheduler();
        this.path = path;
        this.setter = setter;
        this.happened = happened;
        this.limiting = limiting;
    }

    /** Whether this step is held at the terminals. */
    private boolean holds(Step step) {
        return setup.plan().raiseAtMostVolts().isPresent()
                && setup.readsTerminals()
                && step.remoteOn()
                && !step.mayGiveUp()
                && !step.cycled()
                && step.inputVolts() > 0;
    }

    /**
     * Holds a step whose set points stand.
     *
     * @param wanted false once the step is no longer the one under way
     */
    void hold(Step step, BooleanSupplier wanted, Consumer<Result> then) {
        if (holds(step)) {
            new Climb(step, wanted, then).await(scheduler.nowNanos());
        } else {
            then.accept(new Result.Done("the supply is held"));
        }
    }

    private final class Climb {
        private final Step step;
        private final BooleanSupplier wanted;
        private final Consumer<Result> then;
        private final long untilNanos = scheduler.nowNanos() + LONGEST.toNanos();
        private final double highest;

        Climb(Step step, BooleanSupplier wanted, Consumer<Result> then) {
            this.step = step;
            this.wanted = wanted;
            this.then = then;
            OptionalDouble supply = setup.bench().supply().instrument().highestVolts();
            double planned = step.inputVolts() + setup.plan().raiseAtMostVolts().orElse(0);
            this.highest = Math.min(planned, supply.orElse(planned));
        }

        /** For a reading asked for once all has stood for a moment since then. */
        void await(long sinceNanos) {
            scheduler.after(LOOK, () -> look(sinceNanos));
        }

        private void look(long sinceNanos) {
            if (!wanted.getAsBoolean()) {
                then.accept(new Result.Stopped("switched off meanwhile"));
                return;
            }
            Optional<Measured> read = path.latest().number(TERMINALS, sinceNanos + STANDS.toNanos());
            if (read.isPresent()) {
                seen(read.get().value());
            } else if (scheduler.nowNanos() > untilNanos) {
                ended("the terminals were not read in time");
            } else {
                await(sinceNanos);
            }
        }

        private void seen(double terminals) {
            double missing = step.inputVolts() - terminals;
            if (missing <= NEAR * step.inputVolts()) {
                then.accept(new Result.Done("the terminals stand at the step's input"));
            } else if (limiting.getAsBoolean() || scheduler.nowNanos() > untilNanos) {
                ended(terminals, "the supply limits, or it took too long");
            } else {
                raise(terminals, Math.min(SHARE * missing, LARGEST_MOVE));
            }
        }

        private void raise(double terminals, double by) {
            double next = Math.min(setter.volts() + by, highest);
            if (next - setter.volts() < setup.supplyStepVolts()) {
                ended(terminals, String.format(Locale.ROOT, "the supply may be set to %.2f V at most here", highest));
                return;
            }
            setter.volts(next, result -> {
                if (result.isDone()) {
                    await(scheduler.nowNanos());
                } else {
                    then.accept(result);
                }
            });
        }

        private void ended(double terminals, String why) {
            ended(String.format(
                    Locale.ROOT,
                    "the terminals stand at %.2f V instead of %.2f V: %s",
                    terminals,
                    step.inputVolts(),
                    why));
        }

        private void ended(String words) {
            happened.accept(new SessionEvent.Said(
                    EventKind.LINE, step.stage() + " " + step.name() + ": input not held, " + words));
            then.accept(new Result.Done(words));
        }
    }
}
