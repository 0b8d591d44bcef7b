package railwitness.drivers.instrument;

import java.util.concurrent.Callable;
import java.util.function.Consumer;
import railwitness.drivers.line.LineException;

/** One request on its way: run by the station's worker, reported on the scheduler. */
final class Request<T> {
    private final Callable<T> work;
    private final Consumer<RequestOutcome<T>> then;
    private RequestOutcome<T> outcome;
    private RuntimeException mistake;

    Request(Callable<T> work, Consumer<RequestOutcome<T>> then) {
        this.work = work;
        this.then = then;
    }

    /** Works it out. A fault of the line is an outcome; any other exception is a mistake that {@link #report} throws. */
    void run() {
        try {
            outcome = new RequestOutcome.Done<>(work.call());
        } catch (LineException e) {
            fail(e);
        } catch (RuntimeException e) {
            mistake = e;
        } catch (Exception e) {
            mistake = new IllegalStateException(e);
        }
    }

    void fail(LineException why) {
        outcome = new RequestOutcome.Failed<>(why);
    }

    void report() {
        if (mistake != null) {
            throw mistake;
        }
        then.accept(outcome);
    }
}
