package railwitness.drivers.converter;

import java.util.Arrays;

/**
 * One fault of a specimen, written {@code CODE[@PLACE][=VALUE]}: {@code tired-capacitor}, {@code tired-capacitor=3},
 * {@code tired-capacitor@minus=3}, {@code wrong-turns@half-2=1}, {@code dead-drive@side-1}. A place is a rail's name,
 * {@code half-1} or {@code half-2} of the secondary, or {@code side-1} or {@code side-2} of the drive, as the code has
 * it. What the value means and what holds without one is said at each {@link FaultCode}.
 *
 * @param place empty where the usual place is meant
 */
public record Fault(FaultCode code, String place, double value) {
    public Fault {
        code.checked(value);
        code.checkedPlace(place);
    }

    /** Reads a fault; throws IllegalArgumentException that says what is wrong and what is known. */
    public static Fault of(String text) {
        int equals = text.indexOf('=');
        String head = equals < 0 ? text : text.substring(0, equals);
        int at = head.indexOf('@');
        FaultCode code = code(at < 0 ? head : head.substring(0, at));
        double value = equals < 0 ? code.usual() : number(text, text.substring(equals + 1));
        return new Fault(code, at < 0 ? "" : head.substring(at + 1), value);
    }

    private static FaultCode code(String word) {
        return Arrays.stream(FaultCode.values())
                .filter(code -> code.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("unknown fault '" + word + "'; known are "
                        + String.join(
                                ", ",
                                Arrays.stream(FaultCode.values())
                                        .map(FaultCode::word)
                                        .toList())));
    }

    private static double number(String text, String value) {
        try {
            return Double.parseDouble(value);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("fault '" + text + "': '" + value + "' must be a number", e);
        }
    }

    /** The specimen with this fault; its other parameters stay. */
    public Specimen in(Specimen healthy) {
        return code.apply(healthy, place, value);
    }
}
