package railwitness.logger.ui.screen.widgets;

import java.util.Optional;
import railwitness.analysis.design.FigureName;

/**
 * How a figure is written on the screen.
 *
 * @param scale from its SI unit to the one shown
 * @param unit the one shown; empty for a plain ratio
 */
public record FigureWords(double scale, String unit) {
    private static final double MILLI = 1000;
    private static final double PERCENT = 100;

    public static FigureWords of(FigureName name) {
        return switch (name) {
            case AVERAGE_EFFICIENCY, FULL_LOAD_EFFICIENCY -> new FigureWords(PERCENT, "%");
            case RIPPLE -> new FigureWords(MILLI, "mV rms");
            case RIPPLE_PEAK_TO_PEAK -> new FigureWords(MILLI, "mV");
            case STANDBY_CURRENT -> new FigureWords(MILLI, "mA");
            default -> new FigureWords(1, symbol(name.unit()));
        };
    }

    private static String symbol(String unit) {
        return switch (unit) {
            case "ohm" -> "\u03a9";
            case "1" -> "";
            default -> unit;
        };
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
