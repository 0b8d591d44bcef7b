package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.transformer.Half;
import railwitness.analysis.transformer.Ratio.Polarity;
import railwitness.analysis.transformer.WoundReport;
import railwitness.analysis.uncertainty.Estimate;

/** The transformer by itself: winding by winding, polarity, and what is left to proper equipment. */
public final class WoundText {
    private static final double MILLI = 1000;

    /** Stands with every transformer that was measured. */
    public static final String INSULATION = "insulation was not tested: that takes a proper insulation tester";

    private final WoundReport report;

    public WoundText(WoundReport report) {
        this.report = report;
    }

    /** One line for each winding: name, turns meant, turns counted, resistance at 20 degC in mohm, polarity. */
    public List<List<String>> rows() {
        List<List<String>> rows = new ArrayList<>();
        for (Half half : Half.values()) {
            WoundReport.Measured one =
                    report.windings().getOrDefault(half, new WoundReport.Measured(Optional.empty(), Optional.empty()));
            rows.add(List.of(
                    half.words(),
                    report.meant()
                            .map(meant ->
                                    String.valueOf(half.isPrimary() ? meant.primaryTurns() : meant.secondaryTurns()))
                            .orElse(""),
                    one.turns().map(turns -> rounded(turns)).orElse(""),
                    one.ohms20().map(ohms -> rounded(ohms.scale(MILLI))).orElse(""),
                    polarity(half)));
        }
        return rows;
    }

    private String polarity(Half half) {
        if (half == Half.PRIMARY_A || half == Half.SECONDARY_A) {
            return "the reference";
        }
        return words(half == Half.PRIMARY_B ? report.primary() : report.secondary());
    }

    private static String words(Polarity polarity) {
        return switch (polarity) {
            case ALIKE -> "alike";
            case OPPOSED -> "REVERSED";
            case UNCLEAR -> "not measured";
        };
    }

    private static String rounded(Estimate value) {
        return value.known() && value.u() > 0
                ? FigureRow.rounded(value).toString()
                : String.format(java.util.Locale.ROOT, "%.4g", value.value());
    }

    List<String> lines(int widest) {
        TextTable table = new TextTable();
        table.row(List.of("winding", "turns meant", "counted", "mohm at 20 degC", "polarity"));
        table.rule();
        rows().forEach(table::row);
        List<String> lines = new ArrayList<>(table.lines(1, widest));
        lines.add(INSULATION);
        return lines;
    }
}
