package railwitness.analysis.design;

import java.util.OptionalDouble;

/**
 * How the unit converts: table {@code [converter]}. The drive is push-pull: two switches take turns, each feeding one
 * half of the primary from the centre tap.
 *
 * @param filter what the rectifier feeds
 * @param regulated whether the unit holds its rails by itself
 * @param frequencyHz of the full transformer cycle, Hz ({@code frequency_Hz}); ripple is at twice this
 * @param duty share of the cycle in which one switch is on, above 0 to 0.5
 * @param startVolts input at which the unit starts, V ({@code start_V})
 * @param controlAmperes what drive and control draw, A ({@code control_A})
 */
public record Converter(
        FilterInput filter,
        boolean regulated,
        OptionalDouble frequencyHz,
        OptionalDouble duty,
        OptionalDouble startVolts,
        OptionalDouble controlAmperes) {
    public Converter {
        Allowed.positive("frequency_Hz", frequencyHz);
        Allowed.within("duty", duty, 0, 0.5);
        Allowed.positive("start_V", startVolts);
        Allowed.notNegative("control_A", controlAmperes);
    }

    /** An unregulated converter of which only the kind of filter is known. */
    public static Converter unregulated(FilterInput filter) {
        OptionalDouble unknown = OptionalDouble.empty();
        return new Converter(filter, false, unknown, unknown, unknown, unknown);
    }

    /** Share of the cycle in which either switch is on: twice the duty, if known. */
    public OptionalDouble bothDuties() {
        return duty.isPresent() ? OptionalDouble.of(2 * duty.getAsDouble()) : OptionalDouble.empty();
    }
}
