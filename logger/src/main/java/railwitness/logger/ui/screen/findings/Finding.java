package railwitness.logger.ui.screen.findings;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.uncertainty.Coverage;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.ui.screen.widgets.FigureWords;

/**
 * One line of the findings: a figure, what was asked of it, or both.
 *
 * @param name which figure
 * @param rail of which rail
 * @param figure where it was found
 * @param value in the unit shown
 * @param coverage where the uncertainty is known
 */
record Finding(
        FigureName name,
        Optional<String> rail,
        Optional<Figure> figure,
        Optional<Verdict> verdict,
        Optional<Estimate> value,
        Optional<Coverage> coverage) {
    private static final double COVERAGE = 0.95;

    /** Those that are judged first, in the order of the design sheet; then all others. */
    static List<Finding> of(SessionFindings session) {
        List<Finding> all = new ArrayList<>();
        Set<Figure> taken = new HashSet<>();
        for (Verdict verdict : session.findings().verdicts()) {
            FigureName name = FigureName.of(verdict.requirement().figure());
            Optional<String> rail = verdict.requirement().rail();
            Optional<Figure> figure = session.findings().figure(name, rail);
            figure.ifPresent(taken::add);
            all.add(of(name, rail, figure, Optional.of(verdict)));
        }
        session.findings().figures().stream()
                .filter(figure -> !taken.contains(figure))
                .forEach(figure -> all.add(of(figure.name(), figure.rail(), Optional.of(figure), Optional.empty())));
        return all;
    }

    private static Finding of(
            FigureName name, Optional<String> rail, Optional<Figure> figure, Optional<Verdict> verdict) {
        double scale = FigureWords.of(name).scale();
        Optional<Estimate> value = figure.map(found -> found.value().scale(scale));
        Optional<Coverage> coverage =
                value.filter(known -> known.known() && known.u() > 0).map(known -> known.coverage(COVERAGE));
        return new Finding(name, rail, figure, verdict, value, coverage);
    }

    String titled() {
        return FigureWords.of(name).titled(name.word(), rail);
    }
}
