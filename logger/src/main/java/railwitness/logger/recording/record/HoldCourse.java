package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.Optional;
import java.util.function.Consumer;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.time.Due;
import railwitness.drivers.time.Scheduler;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.CyclePart;
import railwitness.logger.recording.plan.Holding;
import railwitness.logger.recording.plan.Step;
import railwitness.safety.power.Result;

/**
 * The course of one hold: its cycle of loads and inputs, the key that a person presses every so often, its limits and
 * alarms, and its end, by time or by a stability rule.
 */
final class HoldCourse {
    /** What a hold may ask of the run. */
    interface Bench {
        /** Brings set points into place. */
        void set(Step step, Consumer<Result> then);

        /** Switches the output off; done when the rails are safe. */
        void off(Consumer<Result> then);

        /** Arms again and brings the unit up by first power. */
        void on(Consumer<Result> then);

        void stop(String by, String words);

        void happened(SessionEvent event);

        /** The hold is over and its constant set points stand. */
        void over();
    }

    private static final String STILL_THERE = "Somebody must be here: look at the unit, then press the key";

    private final Step step;
    private final Holding holding;
    private final Scheduler scheduler;
    private final Person person;
    private final Bench bench;
    private final HoldWatch watch;
    private final long begunNanos;
    private int part = -1;
    private boolean moving;
    private boolean off;
    private long offs;
    private boolean ending;
    private boolean over;
    private Optional<Due> key = Optional.empty();

    HoldCourse(Step step, Holding holding, RunSetup setup, Person person, Bench bench) {
        this.step = step;
        this.holding = holding;
        this.scheduler = setup.scheduler();
        this.person = person;
        this.bench = bench;
        this.begunNanos = scheduler.nowNanos();
        this.watch = new HoldWatch(holding.rules(), step.loadAmps().keySet(), cycleSeconds(holding), begunNanos);
        askAgain();
    }

    private static double cycleSeconds(Holding holding) {
        return holding.cycle().stream()
                .mapToDouble(one -> one.length().toNanos() / 1e9)
                .sum();
    }

    private void askAgain() {
        key = holding.rules()
                .keyEvery()
                .map(every -> scheduler.after(every, () -> {
                    if (!over) {
                        bench.happened(new SessionEvent.Said(EventKind.KEY, "asked for: somebody must be here"));
                        person.act(STILL_THERE, () -> {
                            if (!over) {
                                bench.happened(new SessionEvent.Said(EventKind.KEY, "pressed"));
                                askAgain();
                            }
                        });
                    }
                }));
    }

    void heard(Measured reading) {
        watch.heard(reading);
    }

    void tick() {
        if (over || moving) {
            return;
        }
        if (watch.tooHot().isPresent()) {
            forget();
            bench.stop("hold", watch.tooHot().get());
            return;
        }
        Duration since = Duration.ofNanos(scheduler.nowNanos() - begunNanos);
        Optional<String> enough =
                watch.enough(scheduler.nowNanos(), (kind, words) -> bench.happened(new SessionEvent.Said(kind, words)));
        if (enough.isPresent() && !ending) {
            bench.happened(new SessionEvent.Said(EventKind.STEADY, enough.get() + ": the hold ends here"));
            ending = true;
        }
        if (ending || since.compareTo(step.hold()) >= 0) {
            finish();
        } else if (!holding.cycle().isEmpty()) {
            follow(holding.partAt(since));
        }
    }

    private void follow(int due) {
        if (due != part) {
            part = due;
            CyclePart wanted = holding.cycle().get(due);
            if (wanted.off()) {
                rest();
            } else {
                move(step.at(wanted), () -> {});
            }
        }
    }

    private void rest() {
        bench.happened(new SessionEvent.Said(EventKind.RESTING, "output off for this part of the cycle"));
        off = true;
        offs++;
        moving = true;
        bench.off(result -> went(result, () -> {}));
    }

    private void finish() {
        ending = true;
        if (part < 0) {
            done();
        } else {
            double held = (scheduler.nowNanos() - begunNanos) / 1e9;
            long cycles = (long) Math.floor(held / cycleSeconds(holding) + 0.001);
            String rests = offs == 0 ? "" : ", output off " + offs + (offs == 1 ? " time" : " times");
            bench.happened(new SessionEvent.Said(EventKind.CYCLES, cycles + " whole cycles done" + rests));
            move(step, this::done);
        }
    }

    private void done() {
        forget();
        bench.over();
    }

    /** Nothing of it is wanted any more. */
    void forget() {
        over = true;
        key.ifPresent(Due::cancel);
    }

    private void move(Step to, Runnable then) {
        moving = true;
        if (off) {
            bench.on(up -> went(up, () -> {
                off = false;
                bench.happened(new SessionEvent.Said(EventKind.RESTED, "the unit is up again"));
                move(to, then);
            }));
        } else {
            bench.set(to, result -> went(result, then));
        }
    }

    private void went(Result result, Runnable then) {
        moving = false;
        if (over) {
            return;
        }
        if (result.isDone()) {
            then.run();
        } else if (!(result instanceof Result.Stopped)) {
            bench.stop("instrument", result.words());
        }
    }

    /** A person ends it here: the constant load is averaged, and the plan goes on. */
    void endHere() {
        if (!over && !ending) {
            ending = true;
            bench.happened(new SessionEvent.Said(EventKind.STEADY, "a person ends the hold here"));
        }
    }

    /** Whether power is about to go or to come. */
    boolean powering() {
        return off;
    }
}
