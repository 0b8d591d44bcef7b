package railwitness.logger.ui.screen.widgets;

import java.util.Optional;
import railwitness.analysis.design.FigureName;
import railwitness.logger.reporting.findings.ShownUnit;

/**
 * How a figure is written on the screen.
 *
 * @param scale from its SI unit to the one shown
 * @param unit the one shown; empty for a plain ratio
 */
public record FigureWords(double scale, String unit) {
    public static FigureWords of(FigureName name) {
        ShownUnit shown = ShownUnit.of(name);
        return new FigureWords(shown.factor(), shown.symbol());
    }

    /** Such as "load effect +". */
    public static String name(String figure, Optional<String> rail) {
        return figure + rail.map(of -> " " + RailNames.sign(of)).orElse("");
    }

    /** Such as "load effect +, V". */
    public String titled(String figure, Optional<String> rail) {
        return name(figure, rail) + (unit.isEmpty() ? "" : ", " + unit);
    }
}
