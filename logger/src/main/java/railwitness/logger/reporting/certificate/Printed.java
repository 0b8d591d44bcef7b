package railwitness.logger.reporting.certificate;

import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.uncertainty.Coverage;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Rounding;
import railwitness.analysis.verdict.Limit;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;

/** One figure, or one requirement without a figure, in the words and digits of print. */
record Printed(
        String name, String value, String expanded, String k, String limit, Optional<Outcome> outcome, String at) {
    static final double PROBABILITY = 0.95;

    static Printed of(Figure figure, Optional<Verdict> verdict) {
        PrintUnit unit = PrintUnit.of(figure.name());
        Estimate value = figure.value().scale(unit.factor());
        boolean rounded = value.known() && value.u() > 0;
        Coverage coverage = value.coverage(PROBABILITY);
        Rounding rounding = rounded ? Rounding.expanded(value, coverage) : Rounding.of(value.value(), 0);
        return new Printed(
                name(figure.name(), figure.rail()),
                unit.behind(PrintUnit.minus(
                        rounded ? rounding.valueText() : String.format(Locale.ROOT, "%.5g", value.value()))),
                rounded ? unit.behind(rounding.uncertaintyText()) : value.known() ? "0" : "not known",
                rounded ? String.format(Locale.ROOT, "%.2f", coverage.k()) : "",
                verdict.map(one -> limit(one.requirement().limit(), unit)).orElse(""),
                verdict.map(Verdict::outcome),
                figure.at());
    }

    /** A requirement whose figure was not found. */
    static Printed missing(Verdict verdict) {
        FigureName figure = FigureName.of(verdict.requirement().figure());
        return new Printed(
                name(figure, verdict.requirement().rail()),
                "not found",
                "",
                "",
                limit(verdict.requirement().limit(), PrintUnit.of(figure)),
                Optional.of(verdict.outcome()),
                verdict.reason());
    }

    private static String name(FigureName figure, Optional<String> rail) {
        return figure.word() + rail.map(one -> ", " + one + " rail").orElse("");
    }

    private static String limit(Limit limit, PrintUnit unit) {
        if (limit.least().isEmpty()) {
            return unit.behind("\u2264 " + unit.limit(limit.most().getAsDouble()));
        }
        String least = unit.limit(limit.least().getAsDouble());
        return unit.behind(
                limit.most().isEmpty()
                        ? "\u2265 " + least
                        : least + " to " + unit.limit(limit.most().getAsDouble()));
    }

    String verdict() {
        return outcome.map(Outcome::words).orElse("");
    }
}
