package railwitness.analysis.design;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One thing the unit must keep to: a table {@code [[requirement]]}.
 *
 * @param figure which figure is judged
 * @param rail of which rail; empty judges each rail, or a figure that is of no rail
 * @param atLeast lower limit in the figure's unit
 * @param atMost upper limit in the figure's unit
 * @param band of a ripple limit, the band it is meant in ({@code band_Hz})
 */
public record SheetRequirement(
        FigureName figure, Optional<String> rail, OptionalDouble atLeast, OptionalDouble atMost, Optional<Band> band) {
    public SheetRequirement {
        if (atLeast.isEmpty() && atMost.isEmpty()) {
            throw new IllegalArgumentException(
                    "requirement on '" + figure.word() + "' must state at_least, at_most or both");
        }
        Allowed.finite("at_least", atLeast);
        Allowed.finite("at_most", atMost);
        if (atLeast.isPresent()) {
            Allowed.require(
                    atMost.orElse(Double.MAX_VALUE) >= atLeast.getAsDouble(),
                    "at_most",
                    atMost.orElse(Double.MAX_VALUE),
                    "must not be below at_least " + Allowed.text(atLeast.getAsDouble()));
        }
        if (rail.isPresent() && !figure.perRail()) {
            throw new IllegalArgumentException("figure '" + figure.word() + "' is not of one rail: leave rail out");
        }
    }
}
