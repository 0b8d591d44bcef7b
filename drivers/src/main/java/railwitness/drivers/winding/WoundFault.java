package railwitness.drivers.winding;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * What can be wrong with a wound transformer, written {@code CODE[@PLACE][=VALUE]}; the place is {@code primary} or
 * {@code secondary}. What the value means stands at each.
 */
public enum WoundFault {
    /** Half B is joined the wrong way round; no value. */
    REVERSED_HALF("reversed-half", 1) {
        @Override
        Coil in(Coil sound, boolean primary, double value) {
            return new Coil(
                    sound.turns(),
                    sound.ohms20(),
                    primary,
                    !primary,
                    sound.henriesPerTurn(),
                    sound.coreOhmPerTurn(),
                    sound.primaryLeakHenry(),
                    sound.secondaryLeakHenry(),
                    sound.closedTurnOhm());
        }
    },
    /** A turn is closed by value ohm. */
    SHORTED_TURN("shorted-turn", 0.02) {
        @Override
        Coil in(Coil sound, boolean primary, double ohm) {
            return core(sound, sound.henriesPerTurn(), sound.coreOhmPerTurn(), ohm);
        }
    },
    /** Half B has value turns fewer than half A. */
    MISMATCHED_HALVES("mismatched-halves", 1) {
        @Override
        Coil in(Coil sound, boolean primary, double fewer) {
            return wound(sound, fewer, primary ? Half.PRIMARY_B : Half.SECONDARY_B);
        }
    },
    /** Both halves have value turns fewer than meant. */
    WRONG_TURNS("wrong-turns", 1) {
        @Override
        Coil in(Coil sound, boolean primary, double fewer) {
            return primary
                    ? wound(sound, fewer, Half.PRIMARY_A, Half.PRIMARY_B)
                    : wound(sound, fewer, Half.SECONDARY_A, Half.SECONDARY_B);
        }
    },
    /** The core loses value times as much and has that much less inductance. */
    WEAK_CORE("weak-core", 3) {
        @Override
        Coil in(Coil sound, boolean primary, double factor) {
            return core(sound, sound.henriesPerTurn() / factor, sound.coreOhmPerTurn() / factor, sound.closedTurnOhm());
        }
    },
    /** A crack or gap leaves one part in value of the inductance. */
    GAP("gap", 4) {
        @Override
        Coil in(Coil sound, boolean primary, double factor) {
            return core(sound, sound.henriesPerTurn() / factor, sound.coreOhmPerTurn(), sound.closedTurnOhm());
        }
    },
    /** Both halves have value times the resistance. */
    THIN_WIRE("thin-wire", 2) {
        @Override
        Coil in(Coil sound, boolean primary, double factor) {
            return primary
                    ? resistive(sound, factor, Half.PRIMARY_A, Half.PRIMARY_B)
                    : resistive(sound, factor, Half.SECONDARY_A, Half.SECONDARY_B);
        }
    },
    /** Half A has value times the resistance of half B. */
    POOR_JOINT("poor-joint", 1.6) {
        @Override
        Coil in(Coil sound, boolean primary, double factor) {
            return resistive(sound, factor, primary ? Half.PRIMARY_A : Half.SECONDARY_A);
        }
    };

    private final String code;
    private final double usual;

    WoundFault(String code, double usual) {
        this.code = code;
        this.usual = usual;
    }

    /**
     * The coil with this fault.
     *
     * @param primary on the primary; on the secondary where false
     */
    abstract Coil in(Coil sound, boolean primary, double value);

    /** As written. */
    public String code() {
        return code;
    }

    public double usual() {
        return usual;
    }

    /** Whether a text begins with the code of one of these. */
    public static boolean knows(String text) {
        return find(text).isPresent();
    }

    private static Optional<WoundFault> find(String text) {
        String word = text.split("[@=]", 2)[0];
        return Arrays.stream(values()).filter(fault -> fault.code.equals(word)).findFirst();
    }

    /**
     * The coil with the fault that is written.
     *
     * @throws IllegalArgumentException for another code, place or value
     */
    public static Coil applied(String text, Coil sound) {
        WoundFault fault = find(text)
                .orElseThrow(() -> new IllegalArgumentException("'" + text
                        + "' is no fault of a transformer; those are "
                        + String.join(
                                ", ",
                                Arrays.stream(values()).map(WoundFault::code).toList())));
        int equals = text.indexOf('=');
        String head = equals < 0 ? text : text.substring(0, equals);
        String place = head.contains("@") ? head.substring(head.indexOf('@') + 1) : "secondary";
        if (!place.equals("primary") && !place.equals("secondary")) {
            throw new IllegalArgumentException(
                    "fault '" + text + "': the place is primary or secondary, not '" + place + "'");
        }
        return fault.in(sound, place.equals("primary"), equals < 0 ? fault.usual : value(text, equals));
    }

    private static double value(String text, int equals) {
        try {
            double value = Double.parseDouble(text.substring(equals + 1));
            if (Double.isFinite(value) && value != 0) {
                return value;
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw new IllegalArgumentException("fault '" + text + "': its value must be a number and not 0");
    }

    private static Coil core(Coil sound, double henries, double coreOhm, double closedOhm) {
        return new Coil(
                sound.turns(),
                sound.ohms20(),
                sound.primaryTurned(),
                sound.secondaryTurned(),
                henries,
                coreOhm,
                sound.primaryLeakHenry(),
                sound.secondaryLeakHenry(),
                closedOhm);
    }

    private static Coil with(Coil sound, Map<Half, Double> turns, Map<Half, Double> ohms) {
        return new Coil(
                turns,
                ohms,
                sound.primaryTurned(),
                sound.secondaryTurned(),
                sound.henriesPerTurn(),
                sound.coreOhmPerTurn(),
                sound.primaryLeakHenry(),
                sound.secondaryLeakHenry(),
                sound.closedTurnOhm());
    }

    private static Coil wound(Coil sound, double fewer, Half... halves) {
        Map<Half, Double> turns = new EnumMap<>(sound.turns());
        Map<Half, Double> ohms = new EnumMap<>(sound.ohms20());
        for (Half half : halves) {
            double before = turns.get(half);
            turns.put(half, Math.max(1, before - fewer));
            ohms.put(half, ohms.get(half) * turns.get(half) / before);
        }
        return with(sound, turns, ohms);
    }

    private static Coil resistive(Coil sound, double factor, Half... halves) {
        Map<Half, Double> ohms = new EnumMap<>(sound.ohms20());
        for (Half half : halves) {
            ohms.put(half, ohms.get(half) * factor);
        }
        return with(sound, sound.turns(), ohms);
    }
}
