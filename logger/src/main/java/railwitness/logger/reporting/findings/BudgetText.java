package railwitness.logger.reporting.findings;

import java.util.List;
import java.util.Locale;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.uncertainty.Budget;
import railwitness.analysis.uncertainty.Coverage;
import railwitness.analysis.uncertainty.Rounding;

/** The uncertainty budget of a figure as a table of plain text (laid out as EA-4/02 section 7 and the GUM's H.1 do). */
public final class BudgetText {
    private static final double PROBABILITY = 0.95;

    private BudgetText() {}

    /** One table after the other, their lines ended by line feeds. */
    public static String of(List<Figure> figures) {
        StringBuilder text = new StringBuilder();
        for (Figure figure : figures) {
            text.append(text.length() == 0 ? "" : "\n").append(one(figure));
        }
        return text.toString();
    }

    private static String one(Figure figure) {
        Budget budget = Budget.of(figure.label(), figure.value(), figure.unit());
        TextTable table = new TextTable();
        table.row(List.of(
                "quantity",
                "value",
                "u",
                "unit",
                "distribution",
                "sensitivity",
                "contribution",
                "share %",
                "degrees of freedom"));
        table.rule();
        budget.rows().forEach(row -> table.row(cells(row, budget.result().u())));
        table.rule();
        return "BUDGET   " + figure.label() + ", " + figure.unit() + "\n"
                + figure.definition() + "\n"
                + "at " + figure.at() + "\n\n"
                + String.join("\n", table.lines(1)) + "\n"
                + result(figure);
    }

    private static List<String> cells(Budget.Row row, double all) {
        return List.of(
                row.quantity(),
                number(row.value()),
                number(row.u()),
                row.unit(),
                row.distribution(),
                number(row.sensitivity()),
                number(row.contribution()),
                String.format(Locale.ROOT, "%.1f", 100 * Math.pow(row.contribution() / all, 2)),
                Double.isInfinite(row.degreesOfFreedom())
                        ? "infinite"
                        : String.format(Locale.ROOT, "%.1f", row.degreesOfFreedom()));
    }

    private static String result(Figure figure) {
        double u = figure.value().u();
        String unit = figure.unit();
        if (!figure.value().known()) {
            return String.format(
                    Locale.ROOT,
                    "value %.6g %s; scatter %.2g %s; accuracy of an instrument not stated: u, k and U are not known\n",
                    figure.value().value(),
                    unit,
                    u,
                    unit);
        }
        Coverage coverage = figure.value().coverage(PROBABILITY);
        Rounding rounded = Rounding.expanded(figure.value(), coverage);
        return String.format(
                Locale.ROOT,
                "u = %.3g %s, effective degrees of freedom %s\nk = %.2f for 95 %% (%s)\nU = %s %s\nresult %s %s\n",
                u,
                unit,
                Double.isInfinite(coverage.degreesOfFreedom())
                        ? "infinite"
                        : String.format(Locale.ROOT, "%.1f", coverage.degreesOfFreedom()),
                coverage.k(),
                coverage.how(),
                rounded.uncertaintyText(),
                unit,
                rounded,
                unit);
    }

    private static String number(double value) {
        return value == 0 ? "0" : String.format(Locale.ROOT, "%.4g", value);
    }
}
