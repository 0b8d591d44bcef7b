package railwitness.logger.reporting.certificate;

import java.math.BigDecimal;
import railwitness.analysis.design.FigureName;

/**
 * The unit a figure is printed in.
 *
 * @param factor from the figure's SI unit to this one
 * @param symbol empty for a plain ratio
 */
record PrintUnit(int factor, String symbol) {
    static PrintUnit of(FigureName figure) {
        return switch (figure) {
            case AVERAGE_EFFICIENCY, FULL_LOAD_EFFICIENCY -> new PrintUnit(100, "%");
            case RIPPLE -> new PrintUnit(1000, "mV rms");
            case RIPPLE_PEAK_TO_PEAK -> new PrintUnit(1000, "mV");
            case STANDBY_CURRENT -> new PrintUnit(1000, "mA");
            default -> new PrintUnit(1, symbol(figure.unit()));
        };
    }

    private static String symbol(String unit) {
        return switch (unit) {
            case "ohm" -> "\u03a9";
            case "1" -> "";
            default -> unit;
        };
    }

    String behind(String number) {
        return symbol.isEmpty() ? number : number + " " + symbol;
    }

    /** A limit as the sheet states it, in this unit. */
    String limit(double value) {
        return minus(new BigDecimal(String.valueOf(value))
                .multiply(BigDecimal.valueOf(factor))
                .stripTrailingZeros()
                .toPlainString());
    }

    /** A number with a true minus sign. */
    static String minus(String number) {
        return number.replace('-', '\u2212');
    }
}
