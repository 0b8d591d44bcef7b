package railwitness.logger.reporting.findings;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.expected.Deviations;
import railwitness.analysis.findings.Findings;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.uncertainty.Coverage;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Rounding;
import railwitness.analysis.verdict.Limit;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;

/**
 * One line of a findings table, whoever prints it: a figure, what was asked of it, what was expected of it. Numbers are in
 * the unit shown and rounded to what is known of them; a point divides decimals, a hyphen is the minus.
 *
 * @param name which figure
 * @param rail of which rail; empty where it is not of one
 * @param figure as found, in SI; empty for a requirement that the data cannot answer
 * @param value in the unit shown
 * @param coverage of the value at 95 %, where its uncertainty is known and not zero
 * @param verdict where something was asked
 * @param expected what the sheet leads to expect, in the unit shown, where it bounds it
 */
public record FigureRow(
        FigureName name,
        Optional<String> rail,
        ShownUnit unit,
        Optional<Figure> figure,
        Optional<Estimate> value,
        Optional<Coverage> coverage,
        Optional<Verdict> verdict,
        Optional<Estimate> expected) {
    /** Coverage probability of every U that is shown. */
    public static final double PROBABILITY = 0.95;

    private static final int DIGITS_WHERE_UNKNOWN = 5;

    /** One row for every requirement, in the sheet's order. */
    public static List<FigureRow> judged(Findings findings) {
        return findings.verdicts().stream()
                .map(verdict -> {
                    FigureName name = FigureName.of(verdict.requirement().figure());
                    Optional<String> rail = verdict.requirement().rail();
                    return of(findings, name, rail, Optional.of(verdict));
                })
                .toList();
    }

    /** Every figure that was found, in the figures' order; one that is asked twice stands there twice. */
    public static List<FigureRow> found(Findings findings) {
        List<FigureRow> rows = new ArrayList<>();
        for (Figure figure : findings.figures()) {
            List<Verdict> asked = findings.verdicts().stream()
                    .filter(verdict ->
                            verdict.requirement().figure().equals(figure.name().word())
                                    && verdict.requirement().rail().equals(figure.rail()))
                    .toList();
            if (asked.isEmpty()) {
                rows.add(of(findings, figure.name(), figure.rail(), Optional.empty()));
            }
            asked.forEach(verdict -> rows.add(of(findings, figure.name(), figure.rail(), Optional.of(verdict))));
        }
        return rows;
    }

    /** Those that are judged first, in the order of the sheet; then all others. */
    public static List<FigureRow> judgedFirst(Findings findings) {
        List<FigureRow> rows = new ArrayList<>(judged(findings));
        Set<Figure> taken = new HashSet<>();
        rows.forEach(row -> row.figure().ifPresent(taken::add));
        findings.figures().stream()
                .filter(figure -> !taken.contains(figure))
                .forEach(figure -> rows.add(of(findings, figure.name(), figure.rail(), Optional.empty())));
        return rows;
    }

    private static FigureRow of(Findings findings, FigureName name, Optional<String> rail, Optional<Verdict> verdict) {
        ShownUnit unit = ShownUnit.of(name);
        Optional<Figure> figure = findings.figure(name, rail);
        Optional<Estimate> value = figure.map(found -> found.value().scale(unit.factor()));
        return new FigureRow(
                name,
                rail,
                unit,
                figure,
                value,
                value.filter(FigureRow::hasU).map(known -> known.coverage(PROBABILITY)),
                verdict,
                findings.against().figure(name, rail).map(expected -> expected.value()
                        .scale(unit.factor())));
    }

    private static boolean hasU(Estimate value) {
        return value.known() && value.u() > 0;
    }

    /** Such as "load effect, plus". */
    public String label() {
        return name.word() + rail.map(one -> ", " + one).orElse("");
    }

    /** The value, rounded to its U; to five digits where that is not known; empty where the figure was not found. */
    public Optional<BigDecimal> valueDigits() {
        return value.map(
                found -> coverage.map(known -> Rounding.expanded(found, known).value())
                        .or(() -> Optional.of(found)
                                .filter(exact -> exact.known() && exact.u() == 0)
                                .map(exact -> Rounding.of(exact.value(), 0).value()))
                        .orElseGet(() -> whole(BigDecimal.valueOf(found.value())
                                .round(new MathContext(DIGITS_WHERE_UNKNOWN, RoundingMode.HALF_UP)))));
    }

    /** A count without a point and zero. */
    private static BigDecimal whole(BigDecimal number) {
        return number.stripTrailingZeros().scale() <= 0 ? number.setScale(0, RoundingMode.UNNECESSARY) : number;
    }

    /** U of the value, two digits; empty where it is not known, or zero. */
    public Optional<BigDecimal> expandedDigits() {
        return coverage.map(
                known -> Rounding.expanded(value.orElseThrow(), known).uncertainty());
    }

    /** The value, or "not found". */
    public String valueText() {
        return valueDigits().map(BigDecimal::toPlainString).orElse("not found");
    }

    /** U, "not known", "0" for what is exact, or nothing where there is no value. */
    public String expandedText() {
        return expandedDigits()
                .map(BigDecimal::toPlainString)
                .orElse(value.map(found -> found.known() ? "0" : "not known").orElse(""));
    }

    /** Coverage factor; empty where U is not known. */
    public String kText() {
        return coverage.map(known -> String.format(Locale.ROOT, "%.2f", known.k()))
                .orElse("");
    }

    /** Such as "<= 4.2", ">= 88" or "2.95 to 3.05"; empty where nothing was asked. */
    public String limitText() {
        return verdict.map(one -> limit(one.requirement().limit())).orElse("");
    }

    private String limit(Limit limit) {
        if (limit.least().isEmpty()) {
            return "<= " + unit.limit(limit.most().getAsDouble());
        }
        String least = unit.limit(limit.least().getAsDouble());
        return limit.most().isEmpty()
                ? ">= " + least
                : least + " to " + unit.limit(limit.most().getAsDouble());
    }

    public Optional<Outcome> outcome() {
        return verdict.map(Verdict::outcome);
    }

    public String verdictText() {
        return outcome().map(Outcome::words).orElse("");
    }

    /** Whether it keeps the unit from being fit. */
    public boolean unfit() {
        return outcome().filter(Outcome::unfit).isPresent();
    }

    /** What is expected, with its own U at 95 %, rounded to that; empty where the sheet does not bound it. */
    public Optional<Rounding> expectedDigits() {
        return expected.map(FigureRow::rounded);
    }

    static Rounding rounded(Estimate expected) {
        return Rounding.expanded(expected, expected.coverage(PROBABILITY));
    }

    /** Such as "38.2 +- 1.1"; empty where the sheet does not bound it. */
    public String expectedText() {
        return expectedDigits().map(Rounding::toString).orElse("");
    }

    /** Measured less expected, of magnitudes, in the unit shown; no finer than the coarser of the two U. */
    public Optional<BigDecimal> difference() {
        return value.flatMap(found -> expected.map(foreseen -> {
            double between = Math.abs(found.value()) - Math.abs(foreseen.value());
            double coarser = Math.max(
                    coverage.map(Coverage::expanded).orElse(0.0),
                    foreseen.coverage(PROBABILITY).expanded());
            return Rounding.of(
                            found.value() * foreseen.value() < 0 ? found.value() - foreseen.value() : between, coarser)
                    .value();
        }));
    }

    /** Whether the difference means something: more than both uncertainties together explain. */
    public boolean differs() {
        return value.isPresent()
                && expected.isPresent()
                && Math.abs(Deviations.times(value.get(), expected.get())) > Deviations.MEANS_SOMETHING;
    }

    /** "more", "less", or nothing where the difference means nothing. */
    public String differsText() {
        return differs() ? difference().orElseThrow().signum() < 0 ? "less" : "more" : "";
    }

    /** Where it holds, or why it was not found. */
    public String at() {
        return figure.map(Figure::at).orElse(verdict.map(Verdict::reason).orElse(""));
    }
}
