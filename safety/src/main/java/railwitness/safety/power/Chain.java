package railwitness.safety.power;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import railwitness.drivers.time.Scheduler;

/**
 * Things that take their time, one after the other, unless stopped: the first that is not done ends it. All of it happens on the
 * scheduler. Before each step, and at the end, it looks whether it is still wanted; what came too late is Stopped.
 */
public final class Chain {
    private static final Result.Stopped MEANWHILE = new Result.Stopped("switched off meanwhile");

    private final BooleanSupplier wanted;
    private final List<Step> steps = new ArrayList<>();

    /** One step; it tells its outcome once, at once or later. */
    @FunctionalInterface
    public interface Step {
        void take(Consumer<Result> then);
    }

    private Chain(BooleanSupplier wanted) {
        this.wanted = wanted;
    }

    /** @param wanted false once nothing more of it may happen */
    public static Chain whileWanted(BooleanSupplier wanted) {
        return new Chain(wanted);
    }

    /** Steps that each look for themselves whether they are still wanted. */
    public static Chain begin() {
        return new Chain(() -> true);
    }

    public Chain then(Step step) {
        steps.add(step);
        return this;
    }

    /** What is done at once. */
    public Chain now(Runnable act) {
        return then(done -> {
            act.run();
            done.accept(new Result.Done(""));
        });
    }

    /** Lets so much time go by. */
    public Chain pause(Scheduler scheduler, Duration time) {
        return then(done -> scheduler.after(time, () -> done.accept(new Result.Done(""))));
    }

    /** Looks again and again whether something holds, at most for so long; {@code late} is said of what never did. */
    public Chain until(Scheduler scheduler, BooleanSupplier holds, Duration look, Duration longest, String late) {
        return then(done -> look(scheduler, holds, look, scheduler.nowNanos() + longest.toNanos(), late, done));
    }

    private void look(
            Scheduler scheduler,
            BooleanSupplier holds,
            Duration look,
            long untilNanos,
            String late,
            Consumer<Result> done) {
        if (!wanted.getAsBoolean()) {
            done.accept(MEANWHILE);
        } else if (holds.getAsBoolean()) {
            done.accept(new Result.Done(""));
        } else if (scheduler.nowNanos() > untilNanos) {
            done.accept(new Result.Refused(late));
        } else {
            scheduler.after(look, () -> look(scheduler, holds, look, untilNanos, late, done));
        }
    }

    /** The step's outcome or, after the limit, that it is late; one of them, once. */
    public static Step within(Scheduler scheduler, Duration limit, String late, Step step) {
        return then -> {
            boolean[] taken = {false};
            Consumer<Result> first = result -> {
                if (!taken[0]) {
                    taken[0] = true;
                    then.accept(result);
                }
            };
            step.take(first);
            scheduler.after(limit, () -> first.accept(new Result.Stopped(late)));
        };
    }

    /** Begins; {@code then} is told once, what the last step came to. */
    public void run(Consumer<Result> then) {
        run(0, new Result.Done("nothing to do"), then);
    }

    private void run(int index, Result before, Consumer<Result> then) {
        if (!wanted.getAsBoolean()) {
            then.accept(MEANWHILE);
        } else if (index == steps.size() || !before.isDone()) {
            then.accept(before);
        } else {
            steps.get(index).take(result -> run(index + 1, result, then));
        }
    }
}
