package railwitness.analysis.transformer;

import java.util.OptionalDouble;

/**
 * One number of the design.
 *
 * @param name in a builder's words
 * @param value in its unit
 * @param unit as printed
 * @param atLeast lower limit, where it has one
 * @param atMost upper limit, where it has one
 * @param formula by which it was found
 * @param source of formula and limit
 * @param weak what the estimate leaves out; empty where it is good to a few per cent
 */
public record DesignLine(
        String name,
        double value,
        String unit,
        OptionalDouble atLeast,
        OptionalDouble atMost,
        String formula,
        String source,
        String weak) {

    static DesignLine of(String name, double value, String unit, String formula, String source) {
        return new DesignLine(name, value, unit, OptionalDouble.empty(), OptionalDouble.empty(), formula, source, "");
    }

    DesignLine atMost(double most, String whose) {
        return new DesignLine(
                name, value, unit, atLeast, OptionalDouble.of(most), formula, source + "; " + whose, weak);
    }

    DesignLine atLeast(double least, String whose) {
        return new DesignLine(
                name, value, unit, OptionalDouble.of(least), atMost, formula, source + "; " + whose, weak);
    }

    DesignLine named(String other) {
        return new DesignLine(other, value, unit, atLeast, atMost, formula, source, weak);
    }

    DesignLine plus(double more) {
        return new DesignLine(name, value + more, unit, atLeast, atMost, formula, source, weak);
    }

    DesignLine weak(String why) {
        return new DesignLine(name, value, unit, atLeast, atMost, formula, source, why);
    }

    /** How much of what is allowed is used: 1 at the limit, above it beyond; empty without a limit. */
    public OptionalDouble share() {
        if (atMost.isPresent()) {
            return OptionalDouble.of(value / atMost.getAsDouble());
        }
        return atLeast.isPresent() ? OptionalDouble.of(atLeast.getAsDouble() / Math.max(1e-9, value)) : atLeast;
    }

    /** False where the value lies beyond its limit. */
    public boolean holds() {
        return share().isEmpty() || share().getAsDouble() <= 1;
    }

    /** Whether it has a limit. */
    public boolean limited() {
        return share().isPresent();
    }
}
