package railwitness.analysis.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.analysis.design.Band;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.Rail;
import railwitness.analysis.soak.SoakFigures;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.Figures;
import railwitness.analysis.supply.NotFound;
import railwitness.analysis.supply.RippleMeans;
import railwitness.analysis.supply.RippleReach;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.verdict.DecisionRule;
import railwitness.analysis.verdict.Limit;
import railwitness.analysis.verdict.Requirement;
import railwitness.analysis.verdict.Verdict;

/** Holds the sheet's requirements against the figures. */
final class RequirementJudge {
    private static final Set<FigureName> EITHER_WAY = Set.of(
            FigureName.DRIFT,
            FigureName.AGEING,
            FigureName.DRIFT_BY_TEMPERATURE,
            FigureName.CHANGE_OVER_HOLD,
            FigureName.DRIFT_OF_RIPPLE,
            FigureName.DRIFT_OF_EFFICIENCY,
            FigureName.CHANGE_OF_EFFICIENCY);

    private final Design design;
    private final Figures figures;
    private final RippleMeans ripple;
    private final DecisionRule rule;

    RequirementJudge(Design design, Figures figures, RippleMeans ripple) {
        this.design = design;
        this.figures = figures;
        this.ripple = ripple;
        this.rule = switch (design.decision()) {
            case GUARD_BAND_U -> DecisionRule.GUARD_BAND;
            case SIMPLE_ACCEPTANCE -> DecisionRule.SIMPLE_ACCEPTANCE;
        };
    }

    List<Verdict> verdicts() {
        List<Verdict> verdicts = new ArrayList<>();
        for (railwitness.analysis.design.SheetRequirement asked : design.requirements()) {
            for (Optional<String> rail : rails(asked)) {
                verdicts.add(judge(asked, rail, ""));
            }
        }
        return List.copyOf(verdicts);
    }

    /** What one hold of several says to the requirements on holds. */
    List<Verdict> ofHold(String name) {
        List<Verdict> verdicts = new ArrayList<>();
        for (railwitness.analysis.design.SheetRequirement asked : design.requirements()) {
            if (SoakFigures.NAMES.contains(asked.figure())) {
                rails(asked).forEach(rail -> verdicts.add(judge(asked, rail, ", held at " + name)));
            }
        }
        return List.copyOf(verdicts);
    }

    private List<Optional<String>> rails(railwitness.analysis.design.SheetRequirement asked) {
        if (!asked.figure().perRail()) {
            return List.of(Optional.empty());
        }
        return asked.rail().isPresent()
                ? List.of(asked.rail())
                : design.rails().stream().map(Rail::name).map(Optional::of).toList();
    }

    private Verdict judge(railwitness.analysis.design.SheetRequirement asked, Optional<String> rail, String where) {
        Limit limit = limit(asked);
        String word = asked.figure().word();
        String name = word + rail.map(one -> " " + one).orElse("") + " " + limit.words() + where;
        Requirement requirement = new Requirement(name, word, rail, limit);
        Optional<Figure> figure = figures.find(asked.figure(), rail);
        if (figure.isEmpty()) {
            return Verdict.notJudged(requirement, rule, whyMissing(asked.figure(), rail));
        }
        if (asked.figure() == FigureName.RIPPLE && rail.isPresent()) {
            return ripple(requirement, figure.get(), asked.band(), rail.get());
        }
        return Verdict.of(requirement, inLimitsSense(figure.get().value(), limit, asked.figure()), rule);
    }

    /** A drift may go either way: at most 0.1 %/h means 0.1 up or down. */
    private static Limit limit(railwitness.analysis.design.SheetRequirement asked) {
        boolean eitherWay = EITHER_WAY.contains(asked.figure())
                && asked.atLeast().isEmpty()
                && asked.atMost().getAsDouble() >= 0;
        return eitherWay
                ? Limit.between(-asked.atMost().getAsDouble(), asked.atMost().getAsDouble())
                : new Limit(asked.atLeast(), asked.atMost());
    }

    private String whyMissing(FigureName name, Optional<String> rail) {
        return figures.notFound().stream()
                .filter(missing -> missing.name() == name && missing.rail().equals(rail))
                .map(NotFound::reason)
                .findFirst()
                .orElse(SoakFigures.NAMES.contains(name) ? "nothing was held in this session" : "not measured");
    }

    /** A rail's voltage keeps its sign; limits above zero mean magnitudes. */
    private static Estimate inLimitsSense(Estimate value, Limit limit, FigureName name) {
        boolean signed = Set.of(
                        FigureName.RAIL_VOLTAGE, FigureName.RAIL_VOLTAGE_AS_WIRED, FigureName.HIGHEST_RAIL_VOLTAGE)
                .contains(name);
        double end = limit.most().orElse(limit.least().orElse(0));
        return signed && end > 0 ? value.abs() : value;
    }

    /**
     * A meter that may lose part of the ripple proves a fail, never a pass, unless the limit is meant in its very band, or
     * the loss is small and taken into the uncertainty.
     */
    private Verdict ripple(Requirement requirement, Figure figure, Optional<Band> asked, String rail) {
        Optional<Band> band = Optional.ofNullable(ripple.bands().get(rail));
        OptionalDouble cycleHz = design.converter().frequencyHz();
        if (asked.isPresent() && asked.equals(band)) {
            return Verdict.of(requirement, figure.value(), rule);
        }
        return switch (RippleReach.of(band, cycleHz)) {
            case COVERS -> Verdict.of(requirement, figure.value(), rule);
            case LOSES_PART ->
                atLeast(
                        requirement,
                        figure,
                        String.format(
                                Locale.ROOT,
                                "the meter's band %s may lose up to %.0f %% of the ripple",
                                band.orElseThrow(),
                                100 * RippleReach.lostShare(band.orElseThrow(), cycleHz.orElseThrow())));
            case BELOW -> Verdict.notJudged(requirement, rule, "not measurable with this meter");
            case UNKNOWN -> marked(Verdict.of(requirement, figure.value(), rule));
        };
    }

    private Verdict atLeast(Requirement requirement, Figure figure, String why) {
        return requirement.limit().least().isPresent()
                ? Verdict.notJudged(requirement, rule, why)
                : Verdict.ofLeast(requirement, figure.value(), rule, why);
    }

    private static Verdict marked(Verdict verdict) {
        return new Verdict(
                verdict.requirement(),
                verdict.rule(),
                verdict.outcome(),
                verdict.probability(),
                verdict.reason() + "; band of the ripple reading not known");
    }
}
