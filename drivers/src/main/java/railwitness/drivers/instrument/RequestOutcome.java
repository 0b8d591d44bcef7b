package railwitness.drivers.instrument;

import java.util.function.Consumer;
import railwitness.drivers.line.LineException;

/** How an request to an instrument ended. */
public sealed interface RequestOutcome<T> {
    /** It came back with a value. */
    record Done<T>(T value) implements RequestOutcome<T> {}

    /** It did not; the exception says why and what to do. */
    record Failed<T>(LineException why) implements RequestOutcome<T> {}

    /** Calls one of the two. */
    default void either(Consumer<T> done, Consumer<LineException> failed) {
        if (this instanceof Done<T> d) {
            done.accept(d.value());
        } else if (this instanceof Failed<T> f) {
            failed.accept(f.why());
        }
    }
}
