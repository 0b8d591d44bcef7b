package railwitness.safety.interlock;

import java.util.Optional;
import railwitness.drivers.reading.Reading;

/**
 * Why the output must go off. It stays until a person resets it.
 *
 * @param what name of the watch, or who or what stopped the run
 * @param reading the reading that did it; none for a silence or a stop
 * @param limit the limit it broke; none for a silence or a stop
 * @param atNanos when it was judged, ns on the session's axis
 * @param words one sentence for the person
 */
public record Trip(
        Kind kind, String what, Optional<Reading> reading, Optional<Limits> limit, long atNanos, String words) {
    /** What sort of danger it was. */
    public enum Kind {
        /** A value beyond its limit, or an overload. */
        OUTSIDE,
        /** A watched channel was not read in time. */
        SILENT,
        /** The program itself stood still too long. */
        STOOD_STILL,
        /** A person, or another part of the program, asked for it. */
        STOPPED
    }
}
