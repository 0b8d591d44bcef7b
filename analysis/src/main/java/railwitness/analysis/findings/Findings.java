package railwitness.analysis.findings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.cause.Cause;
import railwitness.analysis.contradiction.Contradiction;
import railwitness.analysis.contradiction.Contradictions;
import railwitness.analysis.contradiction.Rests;
import railwitness.analysis.contradiction.Witnesses;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.soak.Soak;
import railwitness.analysis.soak.SoakFigures;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.Figures;
import railwitness.analysis.supply.LossBudget;
import railwitness.analysis.supply.LossSplit;
import railwitness.analysis.supply.NotFound;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.Points;
import railwitness.analysis.supply.RippleMeans;
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
 * @param contradictions readings that cannot all be true, the gravest first; what rests on them is no figure
 * @param against measured beside what the sheet leads to expect; what is off, and what explains it
 * @param soak what a hold showed; empty where nothing was held
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
        List<Contradiction> contradictions,
        AgainstSheet against,
        Optional<Soak> soak,
        Fitness verdict) {

    /** As {@link #of(List, Optional, Circumstances, Witnesses)}, with nothing but the points to bear witness. */
    public static Findings of(List<OperatingPoint> points, Optional<Design> design, Circumstances circumstances) {
        return of(points, design, circumstances, Witnesses.of(points));
    }

    /** Works everything out; without a design nothing is compared, judged or diagnosed. */
    public static Findings of(
            List<OperatingPoint> points, Optional<Design> design, Circumstances circumstances, Witnesses witnesses) {
        return of(points, design, circumstances, witnesses, CausesWanted.ALWAYS);
    }

    /** As {@link #of(List, Optional, Circumstances, Witnesses)}, with causes only where they are wanted. */
    public static Findings of(
            List<OperatingPoint> points,
            Optional<Design> design,
            Circumstances circumstances,
            Witnesses witnesses,
            CausesWanted causes) {
        Points sorted = new Points(points, design);
        List<Contradiction> against = Contradictions.of(design, witnesses);
        Optional<Soak> soak = circumstances.soak().map(Soak::of);
        Figures figures = WoundPart.joined(
                Rests.keep(
                        withHold(Figures.of(points, design, circumstances.ripple()), soak, sorted.all()),
                        sorted.rails(),
                        against),
                circumstances.wound(),
                !points.isEmpty());
        List<Verdict> verdicts = WoundPart.joined(
                design.map(sheet -> verdicts(sheet, figures, circumstances.ripple(), soak, sorted.all()))
                        .orElse(List.of()),
                circumstances.wound(),
                design);
        return new Findings(
                sorted.all(),
                figures.found(),
                figures.notFound(),
                against.isEmpty() ? LossSplit.of(sorted) : Optional.empty(),
                against.isEmpty() ? SagSplit.of(sorted) : Optional.empty(),
                design.map(sheet -> turns(sheet, figures)).orElse(Map.of()),
                design.filter(sheet -> against.isEmpty())
                        .map(sheet -> budgets(sheet, sorted))
                        .orElse(List.of()),
                verdicts,
                against,
                WoundPart.joined(
                        AgainstSheet.of(sorted, design, circumstances, against.isEmpty() ? causes : CausesWanted.NEVER),
                        circumstances.wound()),
                soak,
                against.isEmpty()
                        ? WoundPart.judged(Verdict.overall(verdicts), circumstances.wound())
                        : neverFit(Verdict.overall(verdicts)));
    }

    /** Those of the whole session, then what each of its other holds says to a requirement on holds. */
    private static List<Verdict> verdicts(
            Design design, Figures figures, RippleMeans ripple, Optional<Soak> soak, List<OperatingPoint> points) {
        List<Verdict> verdicts = new ArrayList<>(new RequirementJudge(design, figures, ripple).verdicts());
        for (Soak other : soak.map(Soak::others).orElse(List.of())) {
            SoakFigures held = SoakFigures.of(other, points);
            verdicts.addAll(new RequirementJudge(design, new Figures(held.found(), held.notFound()), ripple)
                    .ofHold(other.record().name()));
        }
        return verdicts;
    }

    private static Figures withHold(Figures figures, Optional<Soak> soak, List<OperatingPoint> points) {
        if (soak.isEmpty()) {
            return figures;
        }
        SoakFigures held = SoakFigures.of(soak.get(), points);
        List<Figure> found = new ArrayList<>(figures.found());
        found.addAll(held.found());
        List<NotFound> missing = new ArrayList<>(figures.notFound());
        missing.addAll(held.notFound());
        return new Figures(found, missing);
    }

    private static Fitness neverFit(Fitness verdict) {
        return verdict == Fitness.FIT ? Fitness.NOT_JUDGED : verdict;
    }

    /** The same where something from outside the points forbids to call the unit fit, such as a run that tripped. */
    public Findings neverFit() {
        return with(verdicts, contradictions, neverFit(verdict));
    }

    /** The same with one more contradiction, which concerns the record as a whole: no verdict stands beside it. */
    public Findings contradicted(Contradiction whole) {
        List<Contradiction> all = new ArrayList<>(List.of(whole));
        all.addAll(contradictions);
        List<Verdict> open = verdicts.stream()
                .map(one -> Verdict.notJudged(one.requirement(), one.rule(), whole.text()))
                .toList();
        return with(open, List.copyOf(all), Fitness.NOT_JUDGED);
    }

    private Findings with(List<Verdict> otherVerdicts, List<Contradiction> doubts, Fitness fitness) {
        return new Findings(
                points,
                figures,
                notFound,
                lossSplit,
                sagSplit,
                impliedTurns,
                budgets,
                otherVerdicts,
                doubts,
                against,
                soak,
                fitness);
    }

    /** Probable causes, best first; none for a healthy unit. */
    public List<Cause> causes() {
        return against.causes();
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

    /** The figure of that name and rail, if found. */
    public Optional<Figure> figure(FigureName name, Optional<String> rail) {
        return figures.stream()
                .filter(figure -> figure.name() == name && figure.rail().equals(rail))
                .findFirst();
    }
}
