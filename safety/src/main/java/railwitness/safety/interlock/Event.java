package railwitness.safety.interlock;

import railwitness.drivers.reading.Reading;

/** Something the interlock is told. Times are ns on the session's axis. */
public sealed interface Event {
    long atNanos();

    /** An instrument answered, or failed to. */
    record Read(Reading reading) implements Event {
        @Override
        public long atNanos() {
            return reading.repliedNanos();
        }
    }

    /** Time went by. Several a second, whether readings come or not. */
    record Tick(long atNanos) implements Event {}

    /** The run enters a phase. */
    record Enter(Phase phase, long atNanos) implements Event {}

    /**
     * A set point begins to change, or has changed: derived values must not be mixed from readings of before and after.
     * Tell it at both ends of the change.
     */
    record Changed(long atNanos) implements Event {}

    /** A person asks for power off; {@code words} is one sentence. */
    record PersonStop(String words, long atNanos) implements Event {}

    /** Another part of the program asks for power off; {@code words} is one sentence. */
    record Stop(String by, String words, long atNanos) implements Event {}

    /** A person takes the trip back. The phase is then OFF and every watch must be heard anew. */
    record Reset(String person, long atNanos) implements Event {
        public Reset {
            if (person.isBlank()) {
                throw new IllegalArgumentException("a reset needs the name of the person who gives it");
            }
        }
    }
}
