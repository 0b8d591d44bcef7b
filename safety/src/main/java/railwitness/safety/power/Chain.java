package railwitness.safety.power;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.RequestOutcome;
import railwitness.drivers.line.LineException;

/**
 * Requests to instruments, one after the other; the first that is not done ends it. Each looks again, on the
 * instrument's own thread, whether power is still wanted and permitted, so that nothing that waits in a queue comes
 * after an off, or out of a program that stood still.
 */
final class Chain {
    private record Step(InstrumentWorker<?> worker, String what, Callable<Result> work) {}

    private final BooleanSupplier wanted;
    private final BooleanSupplier permitted;
    private final StepLog log;
    private final List<Step> steps = new ArrayList<>();

    /** Told of each step when it ended. */
    interface StepLog {
        void step(String what, String words);
    }

    /**
     * Both are asked from several threads.
     *
     * @param wanted false once switching off began
     * @param permitted false while nothing may bring or raise power
     */
    Chain(BooleanSupplier wanted, BooleanSupplier permitted, StepLog log) {
        this.wanted = wanted;
        this.permitted = permitted;
        this.log = log;
    }

    Chain step(InstrumentWorker<?> worker, String what, Callable<Result> work) {
        steps.add(new Step(worker, what, work));
        return this;
    }

    void run(Consumer<Result> then) {
        run(0, new Result.Done("nothing to do"), then);
    }

    private void run(int index, Result before, Consumer<Result> then) {
        if (index == steps.size()) {
            then.accept(wanted.getAsBoolean() ? before : new Result.Stopped("switched off meanwhile"));
            return;
        }
        Step step = steps.get(index);
        step.worker().ask(() -> attempt(step), outcome -> {
            Result result = wanted.getAsBoolean() ? result(outcome) : new Result.Stopped("switched off meanwhile");
            log.step(step.what(), result.words());
            if (result.isDone()) {
                run(index + 1, result, then);
            } else {
                then.accept(result);
            }
        });
    }

    /* A mistake in an instrument's code must not end the scheduler while power is on: it counts as a refusal. */
    private Result attempt(Step step) throws Exception {
        if (!wanted.getAsBoolean()) {
            return new Result.Stopped("switched off meanwhile");
        }
        if (!permitted.getAsBoolean()) {
            return new Result.Refused("the interlock no longer permits it");
        }
        try {
            return step.work().call();
        } catch (LineException e) {
            throw e;
        } catch (RuntimeException e) {
            return new Result.Refused(step.what() + " failed: " + e.getMessage());
        }
    }

    private static Result result(RequestOutcome<Result> outcome) {
        Result[] found = {new Result.Refused("no outcome")};
        outcome.either(done -> found[0] = done, why -> found[0] = new Result.Refused(why.getMessage()));
        return found[0];
    }
}
