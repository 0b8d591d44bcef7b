package railwitness.drivers.instrument;

import java.util.function.Consumer;
import railwitness.drivers.line.LineException;

/** How an errand to an instrument ended. */
public sealed interface Outcome<T> {
    /** It came back with a value. */
    record Done<T>(T value) implements Outcome<T> {}

    /** It did not; the exception says why and what to do. */
    record Failed<T>(LineException why) implements Outcome<T> {}

    /** Calls one of the two. */
    default void either(Consumer<T> done, Consumer<LineException> failed) {
        if (this instanceof Done<T> d) {
            done.accept(d.value());
        } else if (this instanceof Failed<T> f) {
            failed.accept(f.why());
        }
    }
}
