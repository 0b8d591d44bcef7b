package railwitness.analysis.design;

import java.util.OptionalDouble;

/**
 * What parts and people may meet at the highest input, nothing drawn.
 *
 * @param switchVolts across a switch that is off: twice the input, V
 * @param diodeVolts across a diode that does not conduct: twice the highest half winding, V; empty without turns
 * @param betweenVolts between the outermost rails, V; empty where a rail is neither held nor its turns known
 */
public record Stress(double switchVolts, OptionalDouble diodeVolts, OptionalDouble betweenVolts) {
    /** @param highestVolts of sheet and plan, V */
    public static Stress of(Design design, double highestVolts) {
        OptionalDouble ratio = design.transformer().isEmpty()
                ? OptionalDouble.empty()
                : design.rails().stream()
                        .mapToDouble(rail -> design.ratio(rail).orElseThrow())
                        .max();
        return new Stress(
                2 * highestVolts,
                ratio.isPresent() ? OptionalDouble.of(2 * ratio.getAsDouble() * highestVolts) : ratio,
                between(design, highestVolts));
    }

    private static OptionalDouble between(Design design, double highestVolts) {
        double top = 0;
        double bottom = 0;
        for (Rail rail : design.rails()) {
            if (design.ratio(rail).isEmpty() && !design.regulates(rail)) {
                return OptionalDouble.empty();
            }
            double volts = RailBounds.of(design, rail, highestVolts).expectedVolts() * Math.signum(rail.nominalVolts());
            top = Math.max(top, volts);
            bottom = Math.min(bottom, volts);
        }
        return OptionalDouble.of(top - bottom);
    }
}
