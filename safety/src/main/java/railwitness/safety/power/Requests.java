package railwitness.safety.power;

import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.RequestOutcome;
import railwitness.drivers.line.LineException;

/**
 * Requests to instruments, one after the other. Each looks again, on the instrument's own thread, whether power is still
 * wanted and permitted, so that nothing that waits in a queue comes after an off, or out of a program that stood still.
 */
final class Requests {
    private static final Result.Stopped MEANWHILE = new Result.Stopped("switched off meanwhile");

    private final BooleanSupplier wanted;
    private final BooleanSupplier permitted;
    private final StepLog log;
    private final Chain chain;

    /** Told of each request when it ended. */
    interface StepLog {
        void step(String what, String words);
    }

    /**
     * Both are asked from several threads.
     *
     * @param wanted false once switching off began
     * @param permitted false while nothing may bring or raise power
     */
    Requests(BooleanSupplier wanted, BooleanSupplier permitted, StepLog log) {
        this.wanted = wanted;
        this.permitted = permitted;
        this.log = log;
        this.chain = Chain.whileWanted(wanted);
    }

    Requests step(InstrumentWorker<?> worker, String what, Callable<Result> work) {
        chain.then(then -> worker.ask(() -> attempt(what, work), outcome -> {
            Result result = wanted.getAsBoolean() ? result(outcome) : MEANWHILE;
            log.step(what, result.words());
            then.accept(result);
        }));
        return this;
    }

    void run(Consumer<Result> then) {
        chain.run(then);
    }

    /* A mistake in an instrument's code must not end the scheduler while power is on: it counts as a refusal. */
    private Result attempt(String what, Callable<Result> work) throws Exception {
        if (!wanted.getAsBoolean()) {
            return MEANWHILE;
        }
        if (!permitted.getAsBoolean()) {
            return new Result.Refused("the interlock no longer permits it");
        }
        try {
            return work.call();
        } catch (LineException e) {
            throw e;
        } catch (RuntimeException e) {
            return new Result.Refused(what + " failed: " + e.getMessage());
        }
    }

    private static Result result(RequestOutcome<Result> outcome) {
        Result[] found = {new Result.Refused("no outcome")};
        outcome.either(done -> found[0] = done, why -> found[0] = new Result.Refused(why.getMessage()));
        return found[0];
    }
}
