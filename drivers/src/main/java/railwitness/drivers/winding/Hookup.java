package railwitness.drivers.winding;

import java.util.Arrays;
import java.util.Optional;

/**
 * One way to connect a transformer that lies alone on the bench, for one reading.
 *
 * @param kind what is read
 * @param half of which winding, where it is of one
 * @param count of readings of the same kind one after the other, 1 or more; 1 where there is one
 */
public record Hookup(Kind kind, Optional<Half> half, int count) {

    /** What is read. */
    public enum Kind {
        /** The supply's current goes in at the start of a winding; the meter is at the winding's own ends. */
        ONE_WAY("resistance of", true),
        /** The supply's leads exchanged, the meter's not. */
        OTHER_WAY("resistance, other way, of", true),
        /** Primary A driven through a resistor; the meter is at a winding. */
        VOLTS("voltage of", false),
        PRIMARIES("voltage of both primary halves in series", false),
        SECONDARIES("voltage of both secondary halves in series", false),
        ONE_TURN("voltage of one turn through the hole", false),
        RESISTOR("voltage of the resistor", false),
        BOTH("voltage of resistor and primary A together", false),
        SHORTED_WINDING("voltage of primary A, secondaries shorted", false),
        SHORTED_RESISTOR("voltage of the resistor, secondaries shorted", false),
        RINGING("ringing with the capacitor", false),
        /** As {@link #ONE_WAY}, a while after the output of the unit went off. */
        COOLING("cooling,", true);

        private final String words;
        private final boolean direct;

        Kind(String words, boolean direct) {
            this.words = words;
            this.direct = direct;
        }
    }

    public static Hookup of(Kind kind) {
        return new Hookup(kind, Optional.empty(), 1);
    }

    public static Hookup of(Kind kind, Half half) {
        return new Hookup(kind, Optional.of(half), 1);
    }

    /** The so manieth reading while a winding cools. */
    public static Hookup cooling(Half half, int count) {
        return new Hookup(Kind.COOLING, Optional.of(half), count);
    }

    /** Whether direct current of the supply goes through a winding. */
    public boolean direct() {
        return kind.direct;
    }

    /** As a step is called: {@code resistance of primary A}. */
    public String name() {
        return kind.words + half.map(one -> " " + one.words()).orElse("") + (kind == Kind.COOLING ? " " + count : "");
    }

    /** The one that is called so; empty where none is. */
    public static Optional<Hookup> named(String name) {
        for (Kind kind : Kind.values()) {
            if (name.equals(kind.words)) {
                return Optional.of(of(kind));
            }
            Optional<Half> half = Arrays.stream(Half.values())
                    .filter(one -> name.matches(
                            kind.words + " " + one.words() + (kind == Kind.COOLING ? " [1-9][0-9]{0,3}" : "")))
                    .findFirst();
            if (half.isPresent()) {
                int count = kind == Kind.COOLING ? Integer.parseInt(name.substring(name.lastIndexOf(' ') + 1)) : 1;
                return Optional.of(new Hookup(kind, half, count));
            }
        }
        return Optional.empty();
    }
}
