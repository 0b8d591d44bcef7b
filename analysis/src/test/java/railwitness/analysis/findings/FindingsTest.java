package railwitness.analysis.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import railwitness.analysis.cause.CauseCode;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.analysis.design.Band;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.SheetRequirement;
import railwitness.analysis.reference.SimulatedSupply;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RippleMeans;
import railwitness.analysis.verdict.Fitness;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;

@Execution(ExecutionMode.CONCURRENT)
class FindingsTest {
    private static final double RELATIVE_U = 1e-4;
    private static final Band WIDE = new Band(20, 300_000);
    private final List<OperatingPoint> healthy = SimulatedSupply.healthy(RELATIVE_U);

    @Test
    void healthyUnitIsFitAndHasNoCause() {
        Findings findings = find(
                healthy,
                WIDE,
                atLeast(FigureName.AVERAGE_EFFICIENCY, 0.86),
                atMost(FigureName.LOAD_EFFECT, 4.2),
                atMost(FigureName.RIPPLE, 0.060),
                between(FigureName.EFFECTIVE_TURNS_RATIO, 2.95, 3.05));
        assertThat(findings.verdicts()).extracting(Verdict::outcome).containsOnly(Outcome.PASS);
        assertThat(findings.verdict()).isEqualTo(Fitness.FIT);
        assertThat(findings.causes()).isEmpty();
    }

    @Test
    void heldLoadEffectPassesThoughTheOneAsWiredWouldNot() {
        Findings findings =
                find(healthy, WIDE, atMost(FigureName.LOAD_EFFECT, 4.2), atMost(FigureName.LOAD_EFFECT_AS_WIRED, 4.2));
        assertThat(findings.verdicts())
                .extracting(Verdict::outcome)
                .containsExactly(Outcome.PASS, Outcome.PASS, Outcome.FAIL, Outcome.FAIL);
    }

    @Test
    void missingFigureIsNotJudgedWithItsReason() {
        Findings findings = find(healthy, WIDE, atMost(FigureName.STANDBY_CURRENT, 0.005));
        assertThat(findings.verdict()).isEqualTo(Fitness.NOT_JUDGED);
        assertThat(findings.verdicts().get(0).reason()).isEqualTo("no point with the remote turn-on off");
    }

    @Test
    void narrowRippleMeterProvesAFailNeverAPass() {
        Band narrow = new Band(20, 100_000);
        assertThat(outcomes(narrow, atMost(FigureName.RIPPLE, 0.060))).containsOnly(Outcome.NOT_JUDGED);
        assertThat(outcomes(narrow, atMost(FigureName.RIPPLE, 0.020))).containsOnly(Outcome.FAIL);
    }

    @Test
    void limitMeantInTheMetersBandIsJudged() {
        Band narrow = new Band(20, 100_000);
        SheetRequirement inBand = new SheetRequirement(
                FigureName.RIPPLE,
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(0.060),
                Optional.of(narrow));
        assertThat(outcomes(narrow, inBand)).containsOnly(Outcome.PASS);
    }

    @Test
    void meterThatCannotReachTheRippleGivesNoFigure() {
        Findings findings = find(healthy, new Band(20, 20_000), atMost(FigureName.RIPPLE, 0.060));
        assertThat(findings.figure(FigureName.RIPPLE, Optional.of("plus"))).isEmpty();
        assertThat(findings.verdicts().get(0).reason()).startsWith("not measurable with this meter");
    }

    @Test
    void railLimitsAreMagnitudes() {
        Findings findings = find(healthy, WIDE, between(FigureName.RAIL_VOLTAGE, 37, 39));
        assertThat(findings.verdicts()).extracting(Verdict::outcome).containsOnly(Outcome.PASS);
    }

    @Test
    void splitsNameTheirTermsAndCloseTheEnergy() {
        Findings findings = find(healthy, WIDE);
        double fixed = findings.lossSplit().orElseThrow().fixedWatts().value();
        assertThat(fixed).isBetween(4.5, 5.5); // simulated: 4.8 W without load
        double sum = findings.lossSplit().orElseThrow().at(8).stream()
                .mapToDouble(term -> term.value())
                .sum();
        assertThat(sum).isBetween(23.0, 24.2); // simulated: 23.6 W at 4 A on both rails
        double shared = findings.sagSplit().orElseThrow().sharedOhms().value();
        double own = findings.sagSplit().orElseThrow().ownOhms().get("plus").value();
        assertThat(2 * shared + own).isBetween(0.58, 0.66); // the output resistance with both rails loaded
        assertThat(shared).isPositive();
        assertThat(own).isPositive();
    }

    @Test
    void budgetStandsBesideTheMeasuredLoss() {
        Findings findings = find(healthy, WIDE);
        assertThat(findings.budgets()).hasSize(healthy.size()).allSatisfy(budget -> assertThat(
                        budget.parts().values().stream()
                                        .mapToDouble(Double::doubleValue)
                                        .sum()
                                + budget.notAccountedFor().value())
                .isCloseTo(budget.point().loss().value(), org.assertj.core.api.Assertions.within(1e-9)));
    }

    @Test
    void turnsAreImplied() {
        assertThat(find(healthy, WIDE).impliedTurns().get("plus").words())
                .isEqualTo("agrees with 12 secondary turns, if the primary is 4");
    }

    @Test
    void runThatEndedAtFirstPowerHasItsCauses() {
        Findings findings = Findings.of(
                List.of(),
                Optional.of(SimulatedSupply.design()),
                new Circumstances(
                        RippleMeans.unknown(),
                        OptionalDouble.empty(),
                        Optional.of(new EarlyEnding("standby", 4, false))));
        assertThat(findings.causes().get(0).code()).isEqualTo(CauseCode.SHORTED_SWITCH);
        assertThat(findings.figures()).isEmpty();
        assertThat(findings.verdict()).isEqualTo(Fitness.NOT_JUDGED);
    }

    @Test
    void withoutASheetEverythingIsWorkedOutAndNothingCompared() {
        Findings findings = Findings.of(healthy, Optional.empty(), Circumstances.unknown());
        assertThat(findings.figure(FigureName.OUTPUT_RESISTANCE, Optional.of("plus")))
                .isPresent();
        assertThat(findings.verdicts()).isEmpty();
        assertThat(findings.budgets()).isEmpty();
        assertThat(findings.verdict()).isEqualTo(Fitness.NOT_JUDGED);
    }

    private List<Outcome> outcomes(Band band, SheetRequirement requirement) {
        return find(healthy, band, requirement).verdicts().stream()
                .map(Verdict::outcome)
                .toList();
    }

    private static Findings find(List<OperatingPoint> points, Band band, SheetRequirement... requirements) {
        Design design = SimulatedSupply.design(0.70, List.of(requirements));
        RippleMeans ripple = new RippleMeans(Map.of("plus", band, "minus", band), Map.of());
        return Findings.of(
                points, Optional.of(design), new Circumstances(ripple, OptionalDouble.of(0.020), Optional.empty()));
    }

    private static SheetRequirement atLeast(FigureName figure, double limit) {
        return new SheetRequirement(
                figure, Optional.empty(), OptionalDouble.of(limit), OptionalDouble.empty(), Optional.empty());
    }

    private static SheetRequirement atMost(FigureName figure, double limit) {
        return new SheetRequirement(
                figure, Optional.empty(), OptionalDouble.empty(), OptionalDouble.of(limit), Optional.empty());
    }

    private static SheetRequirement between(FigureName figure, double least, double most) {
        return new SheetRequirement(
                figure, Optional.empty(), OptionalDouble.of(least), OptionalDouble.of(most), Optional.empty());
    }
}
