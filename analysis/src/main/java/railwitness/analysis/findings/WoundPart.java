package railwitness.analysis.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.cause.Cause;
import railwitness.analysis.cause.CauseCode;
import railwitness.analysis.cause.Explained;
import railwitness.analysis.design.Decision;
import railwitness.analysis.design.Design;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.Figures;
import railwitness.analysis.supply.NotFound;
import railwitness.analysis.transformer.WindingDiagnosis;
import railwitness.analysis.transformer.WoundReport;
import railwitness.analysis.transformer.WoundRequirements;
import railwitness.analysis.verdict.DecisionRule;
import railwitness.analysis.verdict.Fitness;
import railwitness.analysis.verdict.Verdict;

/** Joins what was found of a transformer by itself to what was found of the unit. */
final class WoundPart {
    /** Each fault is named rightly in at least so many of a hundred seeded cases; what is left is shared by the others. */
    private static final double FIRST = 0.95;

    private WoundPart() {}

    /** @param unit whether the unit was measured too; else nothing is said to be missing of it */
    static Figures joined(Figures figures, Optional<WoundReport> wound, boolean unit) {
        return wound.map(report -> {
                    List<Figure> found = new ArrayList<>(figures.found());
                    found.addAll(report.figures());
                    List<NotFound> missing = new ArrayList<>(unit ? figures.notFound() : List.of());
                    missing.addAll(report.notFound());
                    return new Figures(found, missing);
                })
                .orElse(figures);
    }

    /** What the sheet requires, then what the design of a transformer asks by itself. */
    static List<Verdict> joined(List<Verdict> verdicts, Optional<WoundReport> wound, Optional<Design> design) {
        if (wound.isEmpty()) {
            return verdicts;
        }
        DecisionRule rule = design.filter(sheet -> sheet.decision() == Decision.SIMPLE_ACCEPTANCE)
                .map(simple -> DecisionRule.SIMPLE_ACCEPTANCE)
                .orElse(DecisionRule.GUARD_BAND);
        List<Verdict> all = new ArrayList<>(verdicts);
        WoundRequirements.of(wound.get()).stream()
                .filter(asked -> verdicts.stream().noneMatch(verdict -> verdict.requirement()
                        .figure()
                        .equals(asked.requirement().figure())))
                .forEach(asked -> all.add(Verdict.of(asked.requirement(), asked.value(), rule)));
        return List.copyOf(all);
    }

    static AgainstSheet joined(AgainstSheet against, Optional<WoundReport> wound) {
        if (wound.isEmpty()) {
            return against;
        }
        List<Figure> expected = new ArrayList<>(against.figures());
        expected.addAll(wound.get().expected());
        List<Cause> causes = causes(wound.get());
        boolean named = !causes.isEmpty();
        return new AgainstSheet(
                against.expectations(),
                expected,
                against.deviations(),
                named ? causes : against.causes(),
                named ? Explained.BY_A_CAUSE : against.explained());
    }

    private static List<Cause> causes(WoundReport report) {
        List<WindingDiagnosis.Suspicion> suspicions = report.suspicions();
        List<Cause> causes = new ArrayList<>();
        for (int i = 0; i < suspicions.size(); i++) {
            WindingDiagnosis.Suspicion one = suspicions.get(i);
            double share = i == 0 ? FIRST : (1 - FIRST) / (suspicions.size() - 1);
            CauseCode code = CauseCode.valueOf(one.fault().name());
            causes.add(new Cause(
                    code,
                    Optional.empty(),
                    Optional.of(one.where()).filter(where -> !where.isEmpty()),
                    share,
                    share,
                    List.of(one.reason()),
                    List.of(),
                    List.of(),
                    code.checks()));
        }
        return causes;
    }

    /** A transformer with a fault that was named is not fit, whatever the limits say. */
    static Fitness judged(Fitness fitness, Optional<WoundReport> wound) {
        boolean faulty = wound.filter(report -> !report.suspicions().isEmpty()).isPresent();
        return faulty ? Fitness.NOT_FIT : fitness;
    }
}
