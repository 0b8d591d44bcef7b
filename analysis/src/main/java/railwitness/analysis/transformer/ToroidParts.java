package railwitness.analysis.transformer;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a design sheet says of core and wire, as far as it does.
 *
 * @param size of the core: outer and inner diameter, height
 * @param material of the core
 * @param primary wire of one half
 * @param secondary wire of one half
 * @param ambientDegC air around the transformer in the unit, degC
 * @param insulation class of wire and tape
 * @param softStart whether the duty grows slowly at the start
 */
public record ToroidParts(
        Optional<Size> size,
        Optional<CoreMaterial> material,
        Optional<Wire> primary,
        Optional<Wire> secondary,
        OptionalDouble ambientDegC,
        Optional<InsulationClass> insulation,
        Optional<Boolean> softStart) {

    /**
     * Edges of a ring, or of several stacked.
     *
     * @param outerMetres outer diameter, m
     * @param innerMetres inner diameter, m
     * @param heightMetres of the stack, m
     */
    public record Size(double outerMetres, double innerMetres, double heightMetres) {
        public Size {
            if (!(innerMetres > 0 && outerMetres > innerMetres && heightMetres > 0)) {
                throw new IllegalArgumentException(
                        "core: outer diameter must be above the inner, both and the height above 0");
            }
        }
    }

    /** A sheet that says nothing of them. */
    public static ToroidParts none() {
        return new ToroidParts(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
