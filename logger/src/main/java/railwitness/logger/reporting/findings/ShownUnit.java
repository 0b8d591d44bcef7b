package railwitness.logger.reporting.findings;

import java.math.BigDecimal;
import railwitness.analysis.design.FigureName;

/**
 * The unit in which people read a quantity; files for other programs keep to SI.
 *
 * @param factor from SI to this one
 * @param word in letters that every console has; empty for a plain ratio
 */
public record ShownUnit(int factor, String word) {
    private static final int MILLI = 1000;
    private static final int MICRO = 1_000_000;
    private static final int PERCENT = 100;

    public static ShownUnit of(FigureName figure) {
        return switch (figure) {
            case AVERAGE_EFFICIENCY, FULL_LOAD_EFFICIENCY, EFFICIENCY_WHILE_HELD, DRIVE_DUTY ->
                new ShownUnit(PERCENT, "%");
            case RIPPLE -> new ShownUnit(MILLI, "mV rms");
            case RIPPLE_PEAK_TO_PEAK -> new ShownUnit(MILLI, "mV");
            case STANDBY_CURRENT -> new ShownUnit(MILLI, "mA");
            case PRIMARY_A_RESISTANCE, PRIMARY_B_RESISTANCE, SECONDARY_A_RESISTANCE, SECONDARY_B_RESISTANCE ->
                new ShownUnit(MILLI, "mohm");
            case MAGNETISING_INDUCTANCE, LEAKAGE_INDUCTANCE -> new ShownUnit(MICRO, "uH");
            case VOLT_SECONDS -> new ShownUnit(MICRO, "V us");
            default -> new ShownUnit(1, figure.unit().equals("1") ? "" : figure.unit());
        };
    }

    /** As set in print and on the screen, with the Greek letter for ohm. */
    public String symbol() {
        return switch (word) {
            case "ohm" -> "\u03a9";
            case "degC" -> "\u00b0C";
            case "mohm" -> "m\u03a9";
            case "V us" -> "V \u00b5s";
            case "uH" -> "\u00b5H";
            default -> word;
        };
    }

    /** A limit as the sheet states it, in this unit. */
    public String limit(double si) {
        BigDecimal exact = new BigDecimal(String.valueOf(si))
                .multiply(BigDecimal.valueOf(factor))
                .stripTrailingZeros();
        return exact.toPlainString();
    }
}
