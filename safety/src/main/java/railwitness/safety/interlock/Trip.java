package railwitness.safety.interlock;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;

/**
 * Why the output must go off. It stays until a person resets it.
 *
 * @param what name of the watch, or who or what stopped the run
 * @param beyond what broke which limit; none for a silence or a stop
 * @param atNanos when it was judged, ns on the session's axis
 * @param said what there is to say where no limit was broken; else empty
 */
public record Trip(Kind kind, String what, Optional<Beyond> beyond, long atNanos, String said) {
    /** What sort of danger it was. */
    public enum Kind {
        /** A value beyond its limit, or an overload. */
        OUTSIDE,
        /** A watched channel was not read in time. */
        SILENT,
        /** The program itself stood still too long. */
        STOOD_STILL,
        /** A person asked for it. */
        PERSON,
        /** Another part of the program asked for it. */
        STOPPED
    }

    /**
     * A value beyond its limit.
     *
     * @param channel what was read; empty for a value worked out from several channels
     * @param value in {@code unit}; empty for one beyond the range
     * @param unit SI unit
     * @param allowed what it should have kept
     */
    public record Beyond(Optional<Channel> channel, OptionalDouble value, String unit, Limits allowed) {
        String words(String what) {
            String shown = value.isPresent() ? Limits.number(value.getAsDouble()) + " " + unit : "beyond the range";
            return what + " is " + shown + ", allowed is " + allowed.words(unit);
        }
    }

    static Trip outside(String what, Beyond beyond, long atNanos) {
        return new Trip(Kind.OUTSIDE, what, Optional.of(beyond), atNanos, "");
    }

    static Trip without(Kind kind, String what, long atNanos, String said) {
        return new Trip(kind, what, Optional.empty(), atNanos, said);
    }

    /** One sentence for the person. */
    public String words() {
        return beyond.map(value -> value.words(what)).orElse(said);
    }
}
