package railwitness.analysis.findings;

import java.util.List;
import java.util.Optional;
import railwitness.analysis.cause.Cause;
import railwitness.analysis.cause.Diagnosis;
import railwitness.analysis.cause.EarlyEnd;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.analysis.cause.Explained;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.expected.Deviation;
import railwitness.analysis.expected.Deviations;
import railwitness.analysis.expected.Expectations;
import railwitness.analysis.expected.Expected;
import railwitness.analysis.expected.ExpectedFigures;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.Points;

/**
 * What was measured beside what the design sheet leads to expect.
 *
 * @param expectations of each point; empty without a sheet
 * @param figures expected ones, those that the sheet bounds
 * @param deviations where measured and expected differ by more than both uncertainties explain, the largest first
 * @param causes probable ones, best first
 * @param explained whether what is off is explained
 */
public record AgainstSheet(
        Optional<Expectations> expectations,
        List<Figure> figures,
        List<Deviation> deviations,
        List<Cause> causes,
        Explained explained) {
    public AgainstSheet {
        figures = List.copyOf(figures);
        deviations = List.copyOf(deviations);
        causes = List.copyOf(causes);
    }

    /**
     * Compares.
     *
     * @param wanted whether a cause is looked for in the points; never where readings contradict each other
     */
    static AgainstSheet of(Points points, Optional<Design> design, Circumstances circumstances, CausesWanted wanted) {
        Optional<Expectations> expectations = design.map(sheet -> Expectations.of(sheet, points.all()));
        List<Deviation> deviations = expectations
                .map(expected -> Deviations.of(points.all(), expected))
                .orElse(List.of());
        Optional<EarlyEnding> ending = circumstances.ending().filter(EarlyEnd::speaks);
        List<Figure> figures = design.map(sheet -> ExpectedFigures.of(sheet, points.all(), expectations.orElseThrow()))
                .orElse(List.of());
        List<Cause> causes;
        if (ending.isPresent() && !EarlyEnd.underLoad(ending.get())) {
            causes = EarlyEnd.causes(ending.get());
        } else if (design.isPresent() && isLookedFor(wanted, deviations)) {
            causes = Diagnosis.of(points, design.get(), circumstances.ripple(), circumstances.leadOhms())
                    .causes();
        } else {
            causes = List.of();
        }
        if (causes.isEmpty() && ending.isPresent()) {
            causes = EarlyEnd.causes(ending.get());
        }
        return new AgainstSheet(expectations, figures, deviations, causes, explained(causes, deviations));
    }

    private static boolean isLookedFor(CausesWanted wanted, List<Deviation> deviations) {
        return wanted == CausesWanted.ALWAYS || wanted == CausesWanted.WHERE_NOTHING_DEVIATES && deviations.isEmpty();
    }

    private static Explained explained(List<Cause> causes, List<Deviation> deviations) {
        if (!causes.isEmpty()) {
            return Explained.BY_A_CAUSE;
        }
        return deviations.isEmpty() ? Explained.NOTHING_OFF : Explained.NO_KNOWN_FAULT;
    }

    /** What the sheet leads to expect of a figure; empty where it cannot bound it. */
    public Optional<Figure> figure(FigureName name, Optional<String> rail) {
        return figures.stream()
                .filter(figure -> figure.name() == name && figure.rail().equals(rail))
                .findFirst();
    }

    /** What the sheet leads to expect at a point. */
    public Expected at(OperatingPoint point) {
        return expectations.map(all -> all.at(point)).orElse(Expected.nothing());
    }
}
