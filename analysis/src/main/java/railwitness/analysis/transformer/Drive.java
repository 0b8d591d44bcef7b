package railwitness.analysis.transformer;

/**
 * How the primary is driven.
 *
 * @param frequencyHz of the full cycle, Hz
 * @param duty share of the cycle in which one switch is on, above 0 to 0.5
 * @param lowestVolts lowest input, V
 * @param nominalVolts input at which losses are worked out, V
 * @param highestVolts highest input, V
 * @param softStart whether the duty grows at the start; without it the first half-cycle swings twice as far
 */
public record Drive(
        double frequencyHz,
        double duty,
        double lowestVolts,
        double nominalVolts,
        double highestVolts,
        boolean softStart) {
    public Drive {
        require(
                frequencyHz > 0 && frequencyHz <= 1e6,
                "frequency " + frequencyHz + " Hz must be above 0, at most 1 MHz");
        require(duty > 0 && duty <= 0.5, "duty " + duty + " must be above 0, at most 0.5");
        require(
                lowestVolts > 0 && lowestVolts <= nominalVolts && nominalVolts <= highestVolts,
                "input voltages must be above 0 and in order: lowest, nominal, highest");
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
