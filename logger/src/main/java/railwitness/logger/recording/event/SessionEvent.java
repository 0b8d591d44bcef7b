package railwitness.logger.recording.event;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;
import railwitness.safety.interlock.Trip;
import railwitness.safety.power.FirstPowerEnd;

/**
 * Something that happened in a session, with its numbers; its words are made when it is shown. What the parts of an event
 * are called here is what they are called in the file ({@code docs/session-file.md}): add, never rename.
 */
public sealed interface SessionEvent {
    EventKind kind();

    /** In a technician's words, without the word of its kind. */
    String words();

    /** One word or two to sort by, and to print before the words. */
    default String what() {
        return kind().word();
    }

    default boolean is(EventKind wanted) {
        return kind() == wanted;
    }

    /** What has no number: said by a person, an instrument, the system. */
    record Said(EventKind kind, String said) implements SessionEvent {
        @Override
        public String words() {
            return said;
        }
    }

    /** A step of power; {@code step} is its word of the trade: voltage, output on, plus load. */
    record PowerStep(String step, String said) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.of(step).orElse(EventKind.POWER_STEP);
        }

        @Override
        public String what() {
            return step;
        }

        @Override
        public String words() {
            return said;
        }
    }

    /** An event of a session recorded before events had numbers. */
    record Earlier(String what, String said) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.of(what).orElse(EventKind.POWER_STEP);
        }

        @Override
        public String words() {
            return said;
        }
    }

    /** A resistance that a person took before power, ohm; {@code check} is the line of the checklist. */
    record ColdResistance(String check, double ohms) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.COLD_RESISTANCE;
        }

        @Override
        public String words() {
            return check + String.format(Locale.ROOT, ": %.6g ohm", ohms);
        }
    }

    /** Something that the interlock watches, and how old its value may grow, s. */
    record Watched(String name, double ageSeconds) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.WATCHED;
        }

        @Override
        public String words() {
            return name + ", no older than " + ageSeconds + " s";
        }
    }

    /** What an instrument cannot do and the run goes on without. */
    record LeftOut(String instrument, String said) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.LEFT_OUT;
        }

        @Override
        public String words() {
            return instrument + ": " + said;
        }
    }

    /** The interlock tripped; {@code said} where no limit was broken. */
    record Tripped(Trip.Kind cause, String subject, Optional<Trip.Beyond> beyond, String said) implements SessionEvent {
        public static Tripped of(Trip trip) {
            return new Tripped(trip.kind(), trip.what(), trip.beyond(), trip.said());
        }

        @Override
        public EventKind kind() {
            return cause == Trip.Kind.PERSON ? EventKind.STOP : EventKind.TRIP;
        }

        @Override
        public String words() {
            return new Trip(cause, subject, beyond, 0, said).words();
        }
    }

    /** First power ended without rails that are up. */
    record FirstPowerEnded(FirstPowerEnd end) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.FIRST_POWER;
        }

        @Override
        public String words() {
            return end.words();
        }
    }

    /** An instrument begins to limit, or holds its set point again. */
    record Limiting(String instrument, boolean begins) implements SessionEvent {
        @Override
        public EventKind kind() {
            return begins ? EventKind.LIMITING : EventKind.LIMITING_OVER;
        }

        @Override
        public String words() {
            return instrument + (begins ? " limits or cannot hold its set point" : " holds again");
        }
    }

    /** A step is taken once more. */
    record Repeated(String stage, String step, String said) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.REPEATED;
        }

        @Override
        public String words() {
            return stage + " " + step + " once more: " + said;
        }
    }

    /** A step ended without an average. */
    record NotReached(String stage, String step, String said) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.NOT_REACHED;
        }

        @Override
        public String words() {
            return stage + " " + step + ": " + said;
        }
    }

    /** The rails gave up at that setting of the supply, V. */
    record DroppedOut(double supplyVolts) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.DROP_OUT;
        }

        @Override
        public String words() {
            return "the rails gave up at a supply setting of " + supplyVolts + " V";
        }
    }

    /** A person switched a resistor to a rail, ohm; 0 where the rail is open. */
    record LoadSwitched(String rail, double ohms) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.LOAD_SWITCHED;
        }

        @Override
        public String words() {
            return rail + (ohms == 0 ? ": open" : ": " + plain() + " ohm");
        }

        private String plain() {
            return new BigDecimal(ohms, new MathContext(6)).stripTrailingZeros().toPlainString();
        }
    }

    /** Readings that cannot all be true, and what to check. */
    record Contradicted(String said, String check) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.CONTRADICTION;
        }

        @Override
        public String words() {
            return said + "; check: " + check;
        }
    }

    /** The wall clock was moved against the session's axis, s; ahead counts positive. */
    record ClockSet(double seconds) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.CLOCK;
        }

        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    seconds > 0
                            ? "the wall clock went %.1f s ahead of the session's axis: it was set, or the computer slept"
                            : "the wall clock was set back by %.1f s",
                    Math.abs(seconds));
        }
    }

    /** So long nothing was recorded, s. */
    record StoodStill(double seconds) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.CLOCK;
        }

        @Override
        public String words() {
            return String.format(
                    Locale.ROOT, "nothing was recorded for %.0f s: the computer slept or stood still", seconds);
        }
    }

    /** Local time changed its offset from UTC, such as {@code +01:00}. */
    record LocalTime(String before, String after) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.CLOCK;
        }

        @Override
        public String words() {
            return "local time went from UTC" + before + " to UTC" + after + "; the session's axis goes on evenly";
        }
    }

    /**
     * Switching off ended.
     *
     * @param confirmed whether the supply said that it is off
     * @param railsSafe whether every rail was read below the touch limit
     */
    record SwitchedOff(boolean confirmed, boolean railsSafe, String said) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.OFF;
        }

        @Override
        public String words() {
            return said;
        }
    }

    /**
     * What was said of an imported trace.
     *
     * @param file name of the file it came from
     * @param bandHz upper end (-3 dB) of the band it was taken in, Hz, where stated
     * @param gainPct limit of the scope's gain error, percent, where stated
     */
    record TraceTaken(Channel channel, String file, OptionalDouble bandHz, OptionalDouble gainPct)
            implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.TRACE;
        }

        @Override
        public String words() {
            String band = bandHz.isPresent()
                    ? String.format(Locale.ROOT, "band up to %.6g Hz", bandHz.getAsDouble())
                    : "band not stated";
            String gain = gainPct.isPresent()
                    ? String.format(Locale.ROOT, "gain within %.6g %%", gainPct.getAsDouble())
                    : "accuracy not stated";
            return String.join(", ", channel + " taken from " + file, "at full load", band, gain);
        }
    }

    /** An interrupted session goes on; nothing was recorded between, s on its axis. */
    record Continued(double lastSeconds, double nowSeconds) implements SessionEvent {
        @Override
        public EventKind kind() {
            return EventKind.CONTINUED;
        }

        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "the session goes on; nothing was recorded from %.1f s to %.1f s (%.1f s)",
                    lastSeconds,
                    nowSeconds,
                    nowSeconds - lastSeconds);
        }
    }
}
