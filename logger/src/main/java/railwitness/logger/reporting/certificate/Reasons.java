package railwitness.logger.reporting.certificate;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.reporting.findings.FigureRow;

/** Why a requirement came to what it did, with the units and digits of the table. */
final class Reasons {
    private Reasons() {}

    /** The verdict's own reason where the table has no number for it. */
    static String of(Verdict verdict, Evidence evidence) {
        return FigureRow.judged(evidence.session().findings()).stream()
                .filter(row -> row.verdict().filter(one -> one.equals(verdict)).isPresent())
                .filter(row ->
                        row.valueDigits().isPresent() && row.expandedDigits().isPresent())
                .filter(row -> verdict.outcome() != Outcome.NOT_JUDGED)
                .findFirst()
                .map(row -> words(verdict, row))
                .orElse(verdict.reason());
    }

    private static String words(Verdict verdict, FigureRow row) {
        double margin = verdict.requirement()
                        .limit()
                        .margin(row.figure().orElseThrow().value().value())
                * row.unit().factor();
        BigDecimal expanded = row.expandedDigits().orElseThrow();
        String unit = row.unit().symbol().isEmpty() ? "" : " " + row.unit().symbol();
        BigDecimal away = BigDecimal.valueOf(Math.abs(margin))
                .setScale(Math.max(0, row.valueDigits().orElseThrow().scale()), RoundingMode.HALF_UP);
        return (margin >= 0 ? "inside" : "outside") + " the limit by " + away.toPlainString() + unit + ", U = "
                + expanded.toPlainString() + unit
                + (verdict.probability().isPresent()
                        ? String.format(
                                Locale.ROOT,
                                "; conforms with probability %.3f",
                                verdict.probability().getAsDouble())
                        : "");
    }
}
