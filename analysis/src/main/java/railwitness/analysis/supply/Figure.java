package railwitness.analysis.supply;

import java.util.Optional;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.uncertainty.Estimate;

/**
 * One figure as found.
 *
 * @param name which
 * @param rail of which rail; empty where it is not of one
 * @param value in the figure's unit
 * @param at the points, range or band it holds for, in words
 * @param definition printed with it
 */
public record Figure(FigureName name, Optional<String> rail, Estimate value, String at, String definition) {

    /** Its name, with its rail where it has one: {@code load effect, plus}. */
    public String label() {
        return name.word() + rail.map(one -> ", " + one).orElse("");
    }

    /** SI unit; "1" for a plain ratio, "%" for regulations. */
    public String unit() {
        return name.unit();
    }
}
