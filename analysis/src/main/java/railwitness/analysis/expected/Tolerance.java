package railwitness.analysis.expected;

import railwitness.analysis.converter.Part;
import railwitness.analysis.converter.Parts;

/**
 * How far a part may lie from the number taken for it.
 *
 * @param part which number
 * @param rail of which rail; -1 for all together
 * @param name of the part in words, for budgets
 * @param relativeU standard uncertainty of its natural logarithm: relative where small, a factor where large
 * @param missing whether the sheet leaves the part out, so that a usual value was taken
 */
public record Tolerance(Part part, int rail, String name, double relativeU, boolean missing) {

    /** The parts with this one off by so many standard uncertainties. */
    public Parts off(Parts parts, double standardUncertainties) {
        double factor = Math.exp(relativeU * standardUncertainties);
        if (part == Part.DUTY) {
            return parts.with(part, Math.min(0.499, parts.get(part) * factor));
        }
        if (part == Part.FREQUENCY) { // gates and snubbers take their charge so many times a second
            return parts.times(part, factor)
                    .times(Part.FIXED_WATTS, factor)
                    .times(Part.SNUBBER_WATTS, factor)
                    .times(Part.SECONDARY_SNUBBER_WATTS, factor);
        }
        return rail < 0 ? parts.times(part, factor) : parts.with(part, rail, parts.get(part, rail) * factor);
    }
}
