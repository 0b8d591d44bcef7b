package railwitness.analysis.findings;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.cause.Cause;
import railwitness.analysis.cause.Diagnosis;
import railwitness.analysis.cause.EarlyEnd;
import railwitness.analysis.cause.Ending;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.Figures;
import railwitness.analysis.supply.LossBudget;
import railwitness.analysis.supply.LossSplit;
import railwitness.analysis.supply.NotFound;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.Points;
import railwitness.analysis.supply.SagSplit;
import railwitness.analysis.transformer.ImpliedTurns;
import railwitness.analysis.verdict.Fitness;
import railwitness.analysis.verdict.Verdict;

/**
 * What a test found.
 *
 * @param points in the order of their time
 * @param figures those found
 * @param notFound those the points cannot give, with reasons
 * @param lossSplit measured terms of the loss, where the points give them
 * @param sagSplit measured parts of the sag, where the points give them
 * @param impliedTurns by rail, where the uncertainty allows a word
 * @param budgets the design's losses beside the measured, point by point
 * @param verdicts one per requirement and rail
 * @param causes probable ones, best first; none for a healthy unit
 * @param verdict on the whole unit
 */
public record Findings(
        List<OperatingPoint> points,
        List<Figure> figures,
        List<NotFound> notFound,
        Optional<LossSplit> lossSplit,
        Optional<SagSplit> sagSplit,
        Map<String, ImpliedTurns> impliedTurns,
        List<LossBudget> budgets,
        List<Verdict> verdicts,
        List<Cause> causes,
        Fitness verdict) {

    /** Works everything out; without a design nothing is compared, judged or diagnosed. */
    public static Findings of(List<OperatingPoint> points, Optional<Design> design, Circumstances circumstances) {
        Points sorted = new Points(points, design);
        Figures figures = Figures.of(points, design, circumstances.ripple());
        List<Verdict> verdicts = design.map(sheet -> new Judgement(sheet, figures, circumstances.ripple()).verdicts())
                .orElse(List.of());
        return new Findings(
                sorted.all(),
                figures.found(),
                figures.notFound(),
                LossSplit.of(sorted),
                SagSplit.of(sorted),
                design.map(sheet -> turns(sheet, figures)).orElse(Map.of()),
                design.map(sheet -> budgets(sheet, sorted)).orElse(List.of()),
                verdicts,
                causes(sorted, design, figures, circumstances),
                Verdict.overall(verdicts));
    }

    private static Map<String, ImpliedTurns> turns(Design design, Figures figures) {
        Map<String, ImpliedTurns> byRail = new LinkedHashMap<>();
        design.transformer().ifPresent(transformer -> design.rails()
                .forEach(rail -> figures.value(FigureName.EFFECTIVE_TURNS_RATIO, rail.name())
                        .flatMap(ratio -> ImpliedTurns.of(transformer, turnsOf(rail, transformer), ratio))
                        .ifPresent(implied -> byRail.put(rail.name(), implied))));
        return byRail;
    }

    private static int turnsOf(Rail rail, Transformer transformer) {
        return rail.secondaryTurns().orElse(transformer.secondaryTurns());
    }

    private static List<LossBudget> budgets(Design design, Points points) {
        return points.all().stream()
                .flatMap(point -> LossBudget.of(design, point).stream())
                .toList();
    }

    private static List<Cause> causes(
            Points points, Optional<Design> design, Figures figures, Circumstances circumstances) {
        Optional<Ending> ending = circumstances.ending().filter(EarlyEnd::speaks);
        if (ending.isPresent()) {
            return EarlyEnd.causes(ending.get());
        }
        return design.map(
                        sheet -> Diagnosis.of(points, sheet, figures, circumstances.ripple(), circumstances.leadOhms()))
                .orElse(List.of());
    }

    /** The figure of that name and rail, if found. */
    public Optional<Figure> figure(FigureName name, Optional<String> rail) {
        return figures.stream()
                .filter(figure -> figure.name() == name && figure.rail().equals(rail))
                .findFirst();
    }
}
