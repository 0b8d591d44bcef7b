package railwitness.analysis.expected;

import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * Something measured that is not as the sheet leads to expect.
 *
 * @param what {@code input.current}, {@code voltage}, {@code ripple}, {@code loss} or {@code efficiency}; of a rail where
 *     there is one
 * @param rail its rail
 * @param stage kind of the stage
 * @param step the point's step
 * @param measured in SI units, with its sign
 * @param expected the same
 * @param timesU difference over its standard uncertainty, both sides' together; with its sign, of the magnitudes
 */
public record Deviation(
        String what,
        Optional<String> rail,
        String stage,
        String step,
        Estimate measured,
        Estimate expected,
        double timesU) {

    /** Measured less expected magnitude over the expected one; 1 where nothing was expected. */
    public double relative() {
        double expectedMagnitude = Math.abs(expected.value());
        return expectedMagnitude == 0 ? 1 : (Math.abs(measured.value()) - expectedMagnitude) / expectedMagnitude;
    }

    /** Unit of both values. */
    public String unit() {
        return unit(what);
    }

    /** Unit of what is expected at a point, by its key. */
    public static String unit(String what) {
        return switch (what) {
            case Expected.INPUT_CURRENT -> "A";
            case Expected.LOSS -> "W";
            case Expected.EFFICIENCY -> "1";
            default -> "V";
        };
    }
}
